import type { DemandCheck, RequirementCheck } from "../../../../shared/model/vehicle/requirementAnswer.ts";
import { formatNumber } from "../../../../shared/quantity/format.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { sureText } from "../../shortlist/resultModel.ts";
import { demandText } from "./answerText.ts";
import { LimitLine } from "./LimitLine.tsx";

/** Met or not, by how much, how sure, and which part stands in the way. */
export function RequirementPanel({ check }: { readonly check: RequirementCheck | null }) {
  if (check === null)
    return <p class="hint">Nothing is asked of it yet. Say what it must do under “What is asked of it”.</p>;
  return (
    <>
      <p class={check.certain ? "vehicle-met" : "vehicle-missed"}>{check.sentence}</p>
      <Warnings items={check.warnings} />
      <TableBox label="What it must do" class="vehicle-wordy vehicle-stacked">
        <table>
          <Heads
            columns={["Asked", "Met", { numbers: "Margin" }, { numbers: "How sure" }, "In words", "What bounds it"]}
          />
          <tbody>
            {check.demands.map((demand) => (
              <DemandRow key={demand.demand} demand={demand} />
            ))}
          </tbody>
        </table>
      </TableBox>
      {check.draws !== null && (
        <p class="hint">
          {check.draws.draws} draws of all inputs, seed {check.draws.seed}
          {check.draws.failed > 0 && `; ${check.draws.failed} gave no state and count as not met`}. All together:{" "}
          {sureText(check.probabilityAll)}.
        </p>
      )}
    </>
  );
}

function DemandRow({ demand }: { readonly demand: DemandCheck }) {
  const { name, met, margin, probability, probabilityDrawn, certain, limitedBy } = demand;
  return (
    <tr class={met ? "" : "vehicle-demand-missed"}>
      <th scope="row">{name}</th>
      <td data-label="Met">{met ? (certain ? "yes" : "by the best estimate") : "no"}</td>
      <td class="number" data-label="Margin">
        {margin === null ? "–" : `${margin >= 0 ? "+" : "−"}${formatNumber(Math.abs(100 * margin), 2)}\u202f%`}
      </td>
      <td class="number" data-label="How sure">
        {sureText(probabilityDrawn ?? probability)}
      </td>
      <td data-label="In words">{demandText(demand)}</td>
      <td data-label="What bounds it">
        <div>
          <LimitLine limit={limitedBy} missed={!met} />
        </div>
      </td>
    </tr>
  );
}

import type { PropellerDesign, PropellerDesigns } from "../../../../shared/model/shortlistDesign.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { bound } from "../../../forms/bound.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { MILLIMETRE } from "../../bench/shownUnits.ts";
import { SeriesFields } from "../../theory/series/SeriesFields.tsx";
import { missing } from "../shortlistState.ts";
import { aim, cancelDesign, designing, series, startDesign } from "./designState.ts";

/** The best diameter and pitch of a series propeller for each motor, instead of those in the box. */
export function DesignPanel() {
  const now = designing.value;
  return (
    <>
      <p>
        For each motor, with each controller, supply and gear: the diameter and pitch of a published series that do what
        is needed best. A printed propeller of that shape does less; measure one before you count on it.
      </p>
      <div class="form-grid">
        <SeriesFields {...bound(series)} />
        <SelectField
          label="Best is"
          {...bound(aim)}
          options={[
            { value: "thrustPerPower", label: "the needed thrust with the least power" },
            { value: "greatestThrust", label: "the most thrust within all limits" },
          ]}
        />
      </div>
      <div class="shortlist-search">
        {now.state === "running" ? (
          <>
            <progress max={1} value={now.fraction} aria-label="Design of propellers" />
            <button type="button" onClick={cancelDesign}>
              Stop
            </button>
          </>
        ) : (
          <>
            <button type="button" disabled={missing.value !== null} onClick={startDesign}>
              Design for every motor
            </button>
            {missing.value !== null && <span class="hint">{missing.value}</span>}
          </>
        )}
      </div>
      {now.state === "failed" && <p class="warning">{now.why}</p>}
      {now.state === "done" && <Designs found={now.designs} />}
    </>
  );
}

function Designs({ found }: { readonly found: PropellerDesigns }) {
  return (
    <>
      <p role="status">{found.answer}</p>
      <Warnings items={found.warnings} />
      <TableBox label="Propellers designed">
        <table>
          <Heads
            columns={["Motor", "Supply", "Gear", { numbers: "Diameter" }, { numbers: "Pitch ratio" }, "In words"]}
          />
          <tbody>
            {found.designs.map((design) => (
              <DesignRow key={`${design.motor} ${design.controller} ${design.supply} ${design.gear}`} design={design} />
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}

function DesignRow({ design }: { readonly design: PropellerDesign }) {
  const { motor, supply, gear, diameter, pitchRatio, sentence, warnings } = design;
  return (
    <tr>
      <th scope="row">{motor}</th>
      <td>{supply}</td>
      <td>{gear ?? "none"}</td>
      <td class="number">{diameter === null ? "–" : formatQuantity(diameter, MILLIMETRE, 3)}</td>
      <td class="number">{pitchRatio === null ? "–" : formatNumber(pitchRatio, 3)}</td>
      <td>
        {sentence} {warnings.map(({ message }) => message).join(" ")}
      </td>
    </tr>
  );
}

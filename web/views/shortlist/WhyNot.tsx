import type { Shortlist } from "../../../shared/model/shortlistResult.ts";
import { Heads } from "../../app/Heads.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { combinationText, failureBars } from "./resultModel.ts";

/** Why the others fail, what would gain most, and what comes nearest. */
export function WhyNot({ result }: { readonly result: Shortlist }) {
  const bars = failureBars(result);
  if (bars.length === 0) return <p>Every combination meets the requirement.</p>;
  return (
    <>
      <ul class="shortlist-failures">
        {bars.map(({ failure, share }) => (
          <li key={`${failure.duty} ${failure.demand}`}>
            <span class="shortlist-bar" aria-hidden="true">
              <span style={{ width: `${100 * share}%` }} />
            </span>
            {failure.sentence}
          </li>
        ))}
      </ul>
      <p class="hint">A combination that fails by several demands is counted in each.</p>
      {result.easing.length > 0 && (
        <>
          <h3>What gains most when it is eased</h3>
          <ul>
            {result.easing.map(({ duty, demand, sentence }) => (
              <li key={`${duty} ${demand}`}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {result.misses.length > 0 && (
        <>
          <h3>Nearest misses</h3>
          <ul class="shortlist-misses">
            {result.misses.map(({ combination, sentence }) => (
              <li key={combination.number}>
                <b>{combinationText(combination)}:</b> {sentence}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** What became of each part: how many of its combinations meet, and why the others do not. */
export function PartTallies({ result }: { readonly result: Shortlist }) {
  return (
    <TableBox label="What became of each part">
      <table>
        <Heads columns={["Part", { numbers: "Meets" }, { numbers: "Of" }, "In words"]} />
        <tbody>
          {result.parts.map(({ kind, name, meeting, combinations, sentence }) => (
            <tr key={`${kind} ${name}`}>
              <th scope="row">{name}</th>
              <td class="number">{meeting}</td>
              <td class="number">{combinations}</td>
              <td>{sentence}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

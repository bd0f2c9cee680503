import { useState } from "preact/hooks";
import { driveMonteCarlo } from "../../../../shared/drive/driveMonteCarlo.ts";
import type { DriveRequest } from "../../../../shared/model/drive.ts";
import type { DriveMonteCarlo } from "../../../../shared/model/driveMonteCarlo.ts";
import { formatInterval } from "../../../../shared/quantity/format.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { POINT_QUANTITIES } from "../pointText.ts";

const DRAWS = 20_000;
const SEED = 1;

type Drawn = { readonly of: DriveRequest; readonly result: DriveMonteCarlo } | { readonly problem: string };

/** The intervals checked by drawing every doubtful input, when asked. */
export function DrawsPanel({ request }: { readonly request: DriveRequest }) {
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const draw = () => {
    try {
      setDrawn({ of: request, result: driveMonteCarlo(request, { draws: DRAWS, seed: SEED }) });
    } catch (thrown) {
      setDrawn({ problem: sentenceOf(thrown) });
    }
  };
  const current = drawn !== null && "result" in drawn && JSON.stringify(drawn.of) === JSON.stringify(request);
  return (
    <>
      <div class="row">
        <button type="button" onClick={draw}>
          Check the intervals by {DRAWS} draws
        </button>
      </div>
      {drawn !== null && "problem" in drawn && <p class="warning">{drawn.problem}</p>}
      {drawn !== null && "result" in drawn && !current && <p class="hint">Something has changed since; draw again.</p>}
      {drawn !== null && "result" in drawn && current && <Outcome result={drawn.result} />}
    </>
  );
}

function Outcome({ result }: { readonly result: DriveMonteCarlo }) {
  return (
    <>
      <Warnings items={result.warnings} />
      <TableBox label="Intervals by draws and by first order">
        <table>
          <caption>
            {result.used} draws, seed {result.seed} (JCGM 101)
          </caption>
          <Heads columns={["Quantity", { numbers: "95 % of the draws" }, { numbers: "First order" }, "Verdict"]} />
          <tbody>
            {POINT_QUANTITIES.flatMap(({ key, name, unit }) => {
              const row = result.results.find(({ quantity }) => quantity === key);
              if (row === undefined) return [];
              return (
                <tr key={key}>
                  <th scope="row">{name}</th>
                  <td class="number">{formatInterval(row.interval95, unit)}</td>
                  <td class="number">{formatInterval(row.firstOrder95, unit)}</td>
                  <td>{row.agrees ? "they agree" : "trust the draws"}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}

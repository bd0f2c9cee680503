import { useState } from "preact/hooks";
import type { Shortlist, ShortlistRow } from "../../../shared/model/shortlistResult.ts";
import { demandsInWords } from "../../../shared/shortlist/demandsInWords.ts";
import { Heads } from "../../app/Heads.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { Warnings } from "../../app/Warnings.tsx";
import { combinationText, marginRows, scoreText, shownColumns, sureText } from "./resultModel.ts";
import { openOnDrive } from "./toDrive.ts";

/** Rows that are shown to begin with. */
const FIRST = 8;

/** Those that meet every demand, best first; one of them opened. */
export function Results({ result }: { readonly result: Shortlist }) {
  const [open, setOpen] = useState(0);
  const [all, setAll] = useState(false);
  const columns = shownColumns(result.rows);
  const chosen = result.rows[Math.min(open, result.rows.length - 1)];
  if (chosen === undefined) return <p>Nothing meets every demand. Why, and what comes nearest, stands below.</p>;
  return (
    <>
      <TableBox label="Combinations that meet the requirement, best first">
        <table class="shortlist-table">
          <thead>
            <tr>
              <th scope="col">Look closer</th>
              {columns.map(({ key, label }) => (
                <th key={key} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {result.rows.slice(0, all ? undefined : FIRST).map((row, at) => (
              <ResultRow
                key={row.combination.number}
                {...{ row, columns }}
                isChosen={row === chosen}
                onOpen={() => setOpen(at)}
              />
            ))}
          </tbody>
        </table>
      </TableBox>
      {result.rows.length > FIRST && (
        <button type="button" class="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? `Show the first ${FIRST}` : `Show all ${result.rows.length}`}
        </button>
      )}
      <details>
        <summary>What was asked</summary>
        <ul>
          {demandsInWords(result.requirement).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
      <details>
        <summary>How the score is made</summary>
        <p>{result.method}</p>
      </details>
      <Closer row={chosen} />
    </>
  );
}

interface ResultRowProps {
  readonly row: ShortlistRow;
  readonly columns: ReturnType<typeof shownColumns>;
  readonly isChosen: boolean;
  readonly onOpen: () => void;
}

function ResultRow({ row, columns, isChosen, onOpen }: ResultRowProps) {
  return (
    <tr class={isChosen ? "shortlist-chosen" : ""}>
      <td>
        <button
          type="button"
          class="quiet"
          aria-pressed={isChosen}
          aria-label={`Look closer at number ${row.rank}, ${combinationText(row.combination)}`}
          onClick={onOpen}
        >
          {row.rank}
        </button>
      </td>
      {columns.map(({ key, cell, isText }) => (
        <td key={key} class={isText ? "shortlist-text" : "number"}>
          {cell(row)}
        </td>
      ))}
    </tr>
  );
}

/** One combination with the margin on each of its limits. */
function Closer({ row }: { readonly row: ShortlistRow }) {
  return (
    <section class="shortlist-closer" aria-labelledby="shortlist-closer">
      <h3 id="shortlist-closer">
        Number {row.rank}: {combinationText(row.combination)}
      </h3>
      <p>
        {scoreText(row)}.{" "}
        {row.drawn !== null && `By ${row.drawn.draws} draws all demands hold with ${sureText(row.drawn.all)}.`}
      </p>
      <Warnings items={row.warnings} />
      <TableBox label="Margin on each demand">
        <table>
          <Heads columns={["Demand", "Held with"]} />
          <tbody>
            {marginRows(row.demands).map((demand) => (
              <tr key={`${demand.duty} ${demand.demand}`}>
                <td>{demand.sentence}</td>
                <td>{sureText(demand.probability)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      <button type="button" onClick={() => openOnDrive(row.train)}>
        Open it on Drive
      </button>
    </section>
  );
}

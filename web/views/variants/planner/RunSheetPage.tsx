import type { RunSheet } from "../../../../shared/model/mountingPlan.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { sheetHead, sheetRows } from "./plannerModel.ts";
import { printAlone } from "./printAlone.ts";
import "./runSheet.css";

/** The runs in their drawn order with room to write; printed alone it is the page at the stand. */
export function RunSheetPage({ sheet }: { readonly sheet: RunSheet }) {
  return (
    <details class="run-sheet" id="run-sheet">
      <summary>Run sheet: {sheet.rows.length} runs in drawn order</summary>
      <div class="run-sheet-page">
        <h3>
          Run sheet, order drawn with seed {sheet.seed} ({sheet.generator})
        </h3>
        <Lines title="Blades, packs and water" lines={sheet.cautions} />
        <Lines title="Before the first run" lines={sheet.before} />
        <Lines title="For every run" lines={sheet.eachRun} />
        <TableBox label="Run sheet">
          <table>
            <Heads columns={sheetHead(sheet)} />
            <tbody>
              {sheetRows(sheet).map((cells) => (
                <tr key={cells[0]}>
                  {cells.map((cell, at) => (
                    <td key={sheetHead(sheet)[at]}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      </div>
      <button type="button" onClick={() => printAlone("run-sheet")}>
        Print the run sheet
      </button>
    </details>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <h4>{title}</h4>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

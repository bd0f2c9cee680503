import { useEffect, useState } from "preact/hooks";
import type { RunBudget } from "../../../shared/model/budget.ts";
import { Heads } from "../../app/Heads.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { PrintedSymbol } from "../../forms/Field.tsx";
import "./budget.css";
import { Fold } from "../../app/Fold.tsx";
import { openRun } from "./benchState.ts";
import { type BudgetBar, type BudgetTable, budgetTables, checkText, leadingCauses } from "./budgetModel.ts";
import { check, startCheck, stopCheck } from "./budgetState.ts";

interface BudgetPanelProps {
  readonly budget: RunBudget;
  /** Nothing is stated of the scale, so that its part is missing. */
  readonly lacksCalibration: boolean;
}

const NO_CALIBRATION =
  "First state how far off the scale reads: it is often the greatest cause, and it is not among these.";

/** Where the doubt of the coefficients comes from, ranked; what would halve it; and a check by draws. */
export function BudgetPanel({ budget, lacksCalibration }: BudgetPanelProps) {
  useEffect(() => stopCheck, [budget]);
  return (
    <Fold
      id="bench-doubt"
      title="Where the doubt comes from"
      note={lacksCalibration ? NO_CALIBRATION : budget.thrustCoefficient.halving.sentence}
      open={false}
      class="bench-budget"
    >
      <p class="muted">
        <PrintedSymbol text="K_T" />: {leadingCauses(budget.thrustCoefficient)}.
      </p>
      {lacksCalibration && <p>Of the rest: {budget.thrustCoefficient.halving.sentence}</p>}
      {budgetTables(budget).map((table) => (
        <OneBudget key={table.quantity} table={table} open={table.quantity === "thrustCoefficient"} />
      ))}
      <Check budget={budget} />
    </Fold>
  );
}

function OneBudget({ table, open }: { readonly table: BudgetTable; readonly open: boolean }) {
  const [all, setAll] = useState(false);
  return (
    <details open={open}>
      <summary>
        {table.title} <PrintedSymbol text={table.symbol} />
      </summary>
      {!open && <p>{table.halving}</p>}
      <TableBox label={`${table.title}: causes of doubt`}>
        <table>
          <caption class="visually-hidden">{table.title}: causes of doubt, the greatest first</caption>
          <CauseHeads symbol={table.symbol} />
          <tbody>
            {table.bars.map((bar) => (
              <Bar key={bar.name} {...bar} />
            ))}
            {table.small !== null && (
              <tr>
                <td colSpan={7}>
                  <button type="button" class="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
                    {all ? "Fold away" : "Show"} {table.small.text}
                  </button>
                </td>
              </tr>
            )}
            {all && table.small?.bars.map((bar) => <Bar key={bar.name} {...bar} />)}
          </tbody>
        </table>
      </TableBox>
      <p class="muted">
        {table.combined} Known to and moved by: one standard uncertainty. A is from the scatter of readings, B from
        other knowledge.
      </p>
    </details>
  );
}

/** The share takes two columns: a bar and its number. */
function CauseHeads({ symbol }: { readonly symbol: string }) {
  return (
    <thead>
      <tr>
        <th scope="col">Cause</th>
        <th scope="col" colSpan={2}>
          Share of the variance
        </th>
        <th scope="col" class="number">
          Known to
        </th>
        <th scope="col" class="number">
          Moves <PrintedSymbol text={symbol} /> by
        </th>
        <th scope="col" title="A: from the scatter of readings. B: from other knowledge">
          Kind
        </th>
        <th scope="col" class="number">
          Degrees of freedom
        </th>
      </tr>
    </thead>
  );
}

function Bar(bar: BudgetBar) {
  return (
    <tr>
      <th scope="row">{bar.name}</th>
      <td class="bench-share">
        <span class="bench-bar" style={{ width: `${100 * bar.share}%` }} aria-hidden="true" />
      </td>
      <td class="number">{bar.shareText}</td>
      <td class="number">{bar.input}</td>
      <td class="number">{bar.effect}</td>
      <td>{bar.kind}</td>
      <td class="number">{bar.degreesOfFreedom}</td>
    </tr>
  );
}

function Check({ budget }: { readonly budget: RunBudget }) {
  const now = check.value?.of === budget ? check.value : null;
  const run = openRun.value;
  if (run === null) return null;
  const working = now !== null && now.result === null && now.problem === "";
  return (
    <div class="bench-check">
      {working ? (
        <div class="row">
          <label>
            Drawing <progress value={now.fraction} />
          </label>
          <button type="button" class="quiet" onClick={stopCheck}>
            Stop
          </button>
        </div>
      ) : (
        <div class="row">
          <button type="button" onClick={() => startCheck(run.id, budget)}>
            Check by Monte Carlo
          </button>
          <span class="hint">Draws every input from its distribution and fits the line again each time.</span>
        </div>
      )}
      {now?.problem && <p class="hint">{now.problem}</p>}
      {now?.result && <Checked {...checkText(now.result)} />}
    </div>
  );
}

function Checked({ answer, rows }: ReturnType<typeof checkText>) {
  return (
    <>
      <p role="status">
        <strong>{answer}</strong>
      </p>
      <TableBox label="Intervals by Monte Carlo and by the budget">
        <table>
          <Heads columns={["95 % interval", { numbers: "By draws" }, { numbers: "By the budget" }, "Verdict"]} />
          <tbody>
            {rows.map((row) => (
              <tr key={row.symbol}>
                <th scope="row">
                  <PrintedSymbol text={row.symbol} />
                </th>
                <td class="number">{row.drawn}</td>
                <td class="number">{row.firstOrder}</td>
                <td>{row.verdict}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}

import { useSignalEffect } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { Caution } from "../../app/Caution.tsx";
import { isReducing, needReductions } from "../../app/reductions.ts";
import { addressOf } from "../../app/route.ts";
import { Screen } from "../../app/Screen.tsx";
import { project, runs } from "../../app/session.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { capitalised } from "../../app/words.ts";
import { Chart } from "../../charts/Chart.tsx";
import { Swatch } from "../../charts/Swatch.tsx";
import { PrintedSymbol } from "../../forms/Field.tsx";
import { lookBesides } from "../vehicle/besides.ts";
import { Chain } from "./Chain.tsx";
import type { Step } from "./nextSteps.ts";
import type { VariantLine } from "./overviewModel.ts";
import { overview, picture, readForOverview } from "./overviewState.ts";
import { VehicleLines } from "./VehicleLines.tsx";
import "./overview.css";

export default function OverviewView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  useEffect(lookBesides, []);
  useSignalEffect(() => void readForOverview());
  const { answer, vehicleAnswer, tone, holds, driveBasis, driveNotes, lines, vehicles, chain, steps } = overview.value;
  const { invented, note } = project.value!.document;
  const drawn = picture.value;
  return (
    <Screen
      question="What is measured, and what does the vehicle make of it?"
      answer={`${answer} ${vehicleAnswer}`.trim()}
      tone={tone}
      isBusy={isReducing.value}
      basis={
        <>
          {invented && (
            <p class="overview-invented">
              <strong>Invented demonstration data.</strong> Nobody measured these numbers; they show what the workbench
              does.
            </p>
          )}
          <p>{holds}</p>
          {note && <p class="overview-note">{note}</p>}
        </>
      }
      picture={
        <>
          <Chain stages={chain} />
          {vehicles.length > 0 && <VehicleLines lines={vehicles} />}
          {drawn.series.some(({ points }) => points.length > 0) && <Chart spec={drawn} />}
        </>
      }
    >
      {lines.length > 0 && (
        <section class="overview-variants" aria-labelledby="overview-variants">
          <h2 id="overview-variants">Every variant</h2>
          <p class="hint" id="overview-basis">
            With 95 % intervals. {driveBasis}
          </p>
          <VariantTable lines={lines} basis={driveBasis} />
          {driveNotes.length > 0 && <DriveNotes notes={driveNotes} />}
        </section>
      )}
      {steps.length > 0 && <Steps steps={steps} />}
      <Caution about="bench" />
    </Screen>
  );
}

function DriveNotes({ notes }: { readonly notes: readonly string[] }) {
  return (
    <details class="overview-notes">
      <summary>What full throttle passes: limits of parts, and what was measured</summary>
      {notes.map((note) => (
        <p key={note} class="warning">
          {note}
        </p>
      ))}
    </details>
  );
}

function VariantTable({ lines, basis }: { readonly lines: readonly VariantLine[]; readonly basis: string }) {
  return (
    <TableBox label="Variants, table">
      <table class="overview-table" aria-describedby="overview-basis">
        <thead>
          <tr>
            <th scope="col">Variant</th>
            <th scope="col" class="number">
              Thrust coefficient <PrintedSymbol text="K_T" />
            </th>
            <th scope="col" class="number">
              Power coefficient <PrintedSymbol text="C_P" />
            </th>
            <th scope="col" class="number">
              Static merit <PrintedSymbol text="FM" />
            </th>
            {basis && (
              <>
                <th scope="col" class="number">
                  Bollard thrust
                </th>
                <th scope="col" class="number">
                  Pack current
                </th>
              </>
            )}
            <th scope="col">To see</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <VariantRow key={line.name} line={line} isDriven={basis !== ""} />
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function VariantRow({ line, isDriven }: { readonly line: VariantLine; readonly isDriven: boolean }) {
  return (
    <tr>
      <th scope="row">
        <Swatch kind="measured" style={line.style} /> {line.name}
        <span class="muted overview-runs"> {line.runs}</span>
      </th>
      <td class="number">{line.thrustCoefficient}</td>
      <td class="number">{line.powerCoefficient}</td>
      <td class="number">{line.staticMerit}</td>
      {isDriven && (
        <>
          <td class="number">
            {line.bollardThrust}
            {line.thrustCondition && <span class="muted overview-condition"> {line.thrustCondition}</span>}
          </td>
          <td class="number">{line.supplyCurrent}</td>
        </>
      )}
      <td>
        <a href={addressOf("bench", { run: line.firstRun })}>
          {capitalised([line.checks, line.warnings].filter((text) => text !== "").join("; ") || "runs")}
          <span class="visually-hidden"> of {line.name}</span>
        </a>
      </td>
    </tr>
  );
}

function Steps({ steps }: { readonly steps: readonly Step[] }) {
  return (
    <section class="card" aria-labelledby="next-steps">
      <h2 id="next-steps">What to do next</h2>
      <ul class="overview-steps">
        {steps.map(({ text, screen, choices, label }) => (
          <li key={text}>
            <span>{text}</span> <a href={addressOf(screen, choices)}>{label}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

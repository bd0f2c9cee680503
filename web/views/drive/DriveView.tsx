import { useSignalEffect } from "@preact/signals";
import { Caution } from "../../app/Caution.tsx";
import { needReductions } from "../../app/reductions.ts";
import { addressOf } from "../../app/route.ts";
import { Screen } from "../../app/Screen.tsx";
import { runs } from "../../app/session.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { Warnings } from "../../app/Warnings.tsx";
import { Chart } from "../../charts/Chart.tsx";
import { Swatch } from "../../charts/Swatch.tsx";
import { seriesStyle } from "../../charts/seriesStyle.ts";
import { PrintedSymbol } from "../../forms/Field.tsx";
import { Slider } from "../../forms/Slider.tsx";
import { VariantChecks } from "../variants/VariantChecks.tsx";
import { ChosenParts } from "./ChosenParts.tsx";
import "./drive.css";
import { type Driven, governingText, pointRows, torqueSourceText } from "./driveModel.ts";
import {
  answer,
  chosen,
  currentPicture,
  driven,
  fluidProblem,
  hotelPower,
  leftOut,
  motor,
  propellers,
  statedMerit,
  throttle,
  thrusters,
  thrustPicture,
} from "./driveState.ts";
import { efficiencyChain, whereTheWattsGo } from "./powerFlow.ts";

export default function DriveView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  const problem = fluidProblem.value || driven.value.find((one) => one.problem !== "")?.problem || "";
  const ready = driven.value.some(({ point }) => point !== null);
  return (
    <Screen
      question="What will it pull in the water?"
      answer={fluidProblem.value || answer.value}
      tone={ready ? "known" : problem ? "problem" : "open"}
      basis={`At bollard: the vehicle held still. ± is the half-width of the 95 % interval that follows from the measured coefficients${motor.value?.document.uncertainties ? " and the constants of the motor; controller and pack" : "; motor, controller and pack"} are taken as stated.`}
      picture={chosen.value !== null && propellers.value.length > 0 && <Pictures />}
    >
      <ChosenParts />
      {propellers.value.length === 0 && (
        <p class="hint">
          No variant has a thrust coefficient yet. <a href={addressOf("bench")}>Reduce a run on the Bench screen</a> and
          give it a variant, or type coefficients above.
        </p>
      )}
      {ready && <PointTable />}
      {driven.value.map((one) => (
        <Flow key={one.propeller.name} driven={one} />
      ))}
      <TorqueSources />
      <LeftOut />
      <Caution about="drive" />
    </Screen>
  );
}

function Pictures() {
  return (
    <>
      <Slider
        label="Throttle"
        symbol="delta"
        unit="%"
        value={Math.round(throttle.value * 100)}
        min={0}
        max={100}
        step={1}
        onChange={(percent) => {
          throttle.value = percent / 100;
        }}
      />
      <VariantChecks />
      <ul class="drive-limits">
        {driven.value.map((one) => (
          <li key={one.propeller.name}>{governingText(one)}</li>
        ))}
      </ul>
      <div class="drive-pictures">
        <ThrustPicture />
        <CurrentPicture />
      </div>
    </>
  );
}

// Each picture reads its own signal, so that nothing else is drawn again for it.
function ThrustPicture() {
  return <Chart spec={thrustPicture.value} height={340} />;
}

function CurrentPicture() {
  return <Chart spec={currentPicture.value} height={340} />;
}

function PointTable() {
  const all = driven.value;
  return (
    <section class="card drive-card" aria-labelledby="drive-table">
      <h2 id="drive-table">At {Math.round(throttle.value * 100)} % throttle</h2>
      <TableBox label="Numbers at this throttle">
        <table>
          <thead>
            <tr>
              <th scope="col">Quantity</th>
              {all.map(({ propeller }) => (
                <th key={propeller.name} scope="col" class="number">
                  <Swatch kind="prediction" style={propeller.style} /> {propeller.name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {pointRows(all).map(({ name, symbol, cells }) => (
              <tr key={name}>
                <th scope="row">
                  {name} {symbol !== "" && <PrintedSymbol text={symbol} />}
                </th>
                {all.map(({ propeller }, at) => (
                  <td key={propeller.name} class="number">
                    {cells[at]}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </section>
  );
}

/** Efficiency of each link, where the watts go, and what to beware of, for one propeller. */
function Flow({ driven: { propeller, point, problem } }: { readonly driven: Driven }) {
  const id = `drive-flow-${propeller.style}`;
  if (point === null) return problem === "" ? null : <p class="warning">{`${propeller.name}: ${problem}`}</p>;
  return (
    <section class="card drive-card" aria-labelledby={id}>
      <h2 id={id}>
        <Swatch kind="prediction" style={propeller.style} /> {propeller.name}: from pack to water
      </h2>
      <Warnings items={point.warnings} />
      <div class="drive-flow-tables">
        <BarTable
          caption="Efficiency of each link"
          rows={efficiencyChain(point).map(({ name, share, text, means }) => ({ name, share, text, note: means }))}
          style={propeller.style}
        />
        <BarTable
          caption="Where the power of the pack goes, all thrusters together"
          rows={whereTheWattsGo(point, thrusters.value, hotelPower.value).map(({ name, share, text }) => ({
            name,
            share,
            text,
            note: `${Math.round(100 * share)}\u202f%`,
          }))}
          style={propeller.style}
        />
      </div>
    </section>
  );
}

interface BarTableProps {
  readonly caption: string;
  readonly rows: readonly {
    readonly name: string;
    readonly share: number;
    readonly text: string;
    readonly note: string;
  }[];
  readonly style: number;
}

function BarTable({ caption, rows, style }: BarTableProps) {
  return (
    <table class={`drive-bars series-${seriesStyle(style).colour}`}>
      <caption>{caption}</caption>
      <tbody>
        {rows.map(({ name, share, text, note }) => (
          <tr key={name}>
            <th scope="row">
              {name}
              <span class="drive-bar" aria-hidden="true">
                <span style={{ width: `${Math.min(100, Math.max(0, 100 * share))}%` }} />
              </span>
            </th>
            <td class="number">{text}</td>
            <td class="muted">{note}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The numbers above use the coefficients as measured; what that leaves out stands here with its size. */
function LeftOut() {
  if (leftOut.value.length === 0) return null;
  return (
    <section class="card drive-card" aria-labelledby="drive-left-out">
      <h2 id="drive-left-out">Left out: from the stand to this water</h2>
      <p>
        The density is that of this water; thrust and torque coefficients are used as measured. Not in the numbers, nor
        in their ±:
      </p>
      <ul>
        {leftOut.value.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p class="hint">
        Walls and surface near the stand are left out too. <a href={addressOf("theory")}>Theory</a> says where each
        factor comes from.
      </p>
    </section>
  );
}

function TorqueSources() {
  if (propellers.value.length === 0) return null;
  return (
    <section class="card drive-card" aria-labelledby="drive-sources">
      <h2 id="drive-sources">What the currents rest on</h2>
      <ul>
        {propellers.value.map((propeller) => (
          <li key={propeller.name}>{torqueSourceText(propeller, statedMerit.value)}</li>
        ))}
      </ul>
      {propellers.value.some(({ torqueSource }) => torqueSource === "statedMerit") && (
        <Slider
          label="Stated static merit where no torque is known"
          symbol="FM"
          value={statedMerit.value}
          min={0.2}
          max={0.9}
          step={0.01}
          onChange={(merit) => {
            statedMerit.value = merit;
          }}
        />
      )}
    </section>
  );
}

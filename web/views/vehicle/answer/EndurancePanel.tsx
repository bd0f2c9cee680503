import type {
  EnduranceAnswer,
  LegAnswer,
  MissionAnswer,
  PackAdvice,
} from "../../../../shared/model/vehicle/enduranceAnswer.ts";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { AMPERE, PERCENT, VOLT, WATT } from "../../bench/shownUnits.ts";
import { legText, legTime } from "./answerText.ts";
import { rangePicture, trackPicture } from "./enduranceCharts.ts";
import { HoldingTable } from "./HoldingTable.tsx";
import { Shares } from "./SpeedPanel.tsx";
import { AMPERE_HOUR, KILOMETRE, MINUTE, shown, WATT_HOUR } from "./units.ts";

/** How long it works: the mission leg by leg, how far at which speed, holding in a current, and which pack. */
export function EndurancePanel({ endurance }: { readonly endurance: EnduranceAnswer | null }) {
  if (endurance === null) return <p class="hint">The charge of the pack is not stated, so no time can be told.</p>;
  const { mission, speeds, holding, packs } = endurance;
  return (
    <>
      {mission === null && speeds === null && <p>{endurance.sentence}</p>}
      <Warnings items={endurance.warnings} />
      {mission !== null && <Mission mission={mission} />}
      {packs !== null && <Packs advice={packs} />}
      {speeds !== null && (
        <>
          <h3>How far and how long</h3>
          <p>{speeds.sentence}</p>
          <Chart spec={rangePicture(speeds)} height={300} />
          {speeds.bestRange !== null && <Shares shares={speeds.bestRange.shares} of="way" unit={KILOMETRE} />}
        </>
      )}
      {holding !== null && <HoldingTable map={holding} />}
      <details>
        <summary>What it takes for granted</summary>
        <ul>
          {endurance.assumptions.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Mission({ mission }: { readonly mission: MissionAnswer }) {
  return (
    <>
      <h3>The mission</h3>
      <p class={mission.fits ? "vehicle-met" : "vehicle-missed"}>{mission.sentence}</p>
      <TableBox label="The mission, leg by leg" class="vehicle-wordy">
        <table>
          <caption>Best estimates; how sure the whole is stands above</caption>
          <thead>
            <tr>
              {[
                "Leg",
                "Time",
                "Mean power",
                "Greatest current",
                "Least voltage",
                "Charge",
                "Energy",
                "Left after",
                "How it went",
              ].map((head) => (
                <th key={head} scope="col" class={head === "Leg" || head === "How it went" ? "" : "number"}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {mission.legs.map((leg, at) => (
              <LegRow key={`${at} ${leg.name}`} leg={leg} />
            ))}
          </tbody>
        </table>
      </TableBox>
      {mission.track.length > 1 && <Chart spec={trackPicture(mission)} height={280} />}
      <Shares shares={mission.shares} of="time" unit={MINUTE} />
    </>
  );
}

function LegRow({ leg }: { readonly leg: LegAnswer }) {
  const { name, state, power, greatestCurrent, leastVoltage, charge, energy, chargeAfter } = leg;
  return (
    <tr class={state === "done" ? "" : "vehicle-demand-missed"}>
      <th scope="row">{name}</th>
      <td class="number">{legTime(leg)}</td>
      <td class="number">{shown(power, WATT)}</td>
      <td class="number">{shown(greatestCurrent, AMPERE)}</td>
      <td class="number">{shown(leastVoltage, VOLT)}</td>
      <td class="number">{shown(charge, AMPERE_HOUR)}</td>
      <td class="number">{shown(energy.source, WATT_HOUR)}</td>
      <td class="number">{shown(chargeAfter, PERCENT, 2)}</td>
      <td>{legText(leg)}</td>
    </tr>
  );
}

function Packs({ advice }: { readonly advice: PackAdvice }) {
  return (
    <>
      <h3>Which pack</h3>
      <p>{advice.sentence}</p>
      <ul>
        {advice.packs.map(({ name, fits, sentence }) => (
          <li key={name} class={fits ? "" : "vehicle-missed"}>
            {sentence}
          </li>
        ))}
      </ul>
    </>
  );
}

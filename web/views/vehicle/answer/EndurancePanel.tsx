import type {
  EnduranceAnswer,
  LegAnswer,
  MissionAnswer,
  PackAdvice,
} from "../../../../shared/model/vehicle/enduranceAnswer.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { AMPERE, PERCENT, VOLT, WATT } from "../../bench/shownUnits.ts";
import { legText, legTime } from "./answerText.ts";
import { rangePicture, trackPicture } from "./enduranceCharts.ts";
import { HoldingTable } from "./HoldingTable.tsx";
import { Shares } from "./SpeedPanel.tsx";
import { AMPERE_HOUR, KILOMETRE, MINUTE, shownUncertain, WATT_HOUR } from "./units.ts";

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
      <TableBox label="The mission, leg by leg" class="vehicle-wordy vehicle-stacked vehicle-mission">
        <table>
          <caption>With 95{"\u202f"}% intervals as far as the inputs state their doubt</caption>
          <Heads columns={["Leg", ...LEG_NUMBERS.map(({ head }) => ({ numbers: head })), "How it went"]} />
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

/** What is told of a leg as a number. */
const LEG_NUMBERS: readonly { readonly head: string; readonly of: (leg: LegAnswer) => string }[] = [
  { head: "Time", of: legTime },
  { head: "Mean power", of: ({ power }) => shownUncertain(power, WATT) },
  { head: "Greatest current", of: ({ greatestCurrent }) => shownUncertain(greatestCurrent, AMPERE) },
  { head: "Least voltage", of: ({ leastVoltage }) => shownUncertain(leastVoltage, VOLT) },
  { head: "Charge", of: ({ charge }) => shownUncertain(charge, AMPERE_HOUR) },
  { head: "Energy", of: ({ energyTaken }) => shownUncertain(energyTaken, WATT_HOUR) },
  { head: "Left after", of: ({ chargeAfter }) => shownUncertain(chargeAfter, PERCENT) },
];

function LegRow({ leg }: { readonly leg: LegAnswer }) {
  return (
    <tr class={leg.state === "done" ? "" : "vehicle-demand-missed"}>
      <th scope="row">{leg.name}</th>
      {LEG_NUMBERS.map(({ head, of }) => (
        <td key={head} class="number" data-label={head}>
          {of(leg)}
        </td>
      ))}
      <td data-label="How it went">{legText(leg)}</td>
    </tr>
  );
}

function Packs({ advice }: { readonly advice: PackAdvice }) {
  return (
    <>
      <h3>Which pack</h3>
      <p>{advice.sentence}</p>
      {advice.packs.length > 0 && (
        <p class="hint">
          What a mission needs has its 95{"\u202f"}% interval; what is left and to spare are best estimates, and “not
          surely” stands where they lie within the doubt.
        </p>
      )}
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

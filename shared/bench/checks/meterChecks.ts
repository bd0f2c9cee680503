import { ROLE_NAMES } from "../../log/roleUnits.ts";
import type { ColumnRole } from "../../model/recipe.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { Channel } from "../channels.ts";
import type { RunFacts } from "../runFacts.ts";

/** A stated uncertainty of a meter beyond this part is more likely a per cent that was typed without its sign. */
const LARGEST_MEANT = 0.2;

/** What is stated of how far off the meters of the run read, and what the intervals lack where nothing is. */
export function meterChecks(facts: RunFacts): Warning[] {
  return [noCalibration(facts), ...exactMeters(facts), ...largeUncertainties(facts)].filter((found) => found !== null);
}

function noCalibration({ channels, thrust }: RunFacts): Warning | null {
  if (channels.thrust.relativeUncertainty > 0 || channels.thrust.calibration) return null;
  const [low, high] = thrust.document.coefficient.interval95;
  return warning({
    code: "bench.no-calibration",
    where: `column ${channels.thrust.header}`,
    found: `no uncertainty is given for the calibration of the thrust, so the interval ${formatNumber(low, 4)} to ${formatNumber(high, 4)} does not contain the scale's own error`,
    needed: "the relative uncertainty of the scale with its lever",
    mend: "Hang known weights on the stand and give the relative standard uncertainty, often 0.5 to 2 %",
  });
}

/** Meters of the power of which nothing is stated: the same for them. */
function exactMeters({ channels, used, powerSource }: RunFacts): Warning[] {
  const isExact = (role: "torque" | "voltage" | "current" | "electricalPower") => {
    const channel = channels[role];
    return channel !== undefined && channel.calibration === null && channel.relativeUncertainty === 0;
  };
  const electrical = channels.electricalPower ? (["electricalPower"] as const) : (["voltage", "current"] as const);
  const drawn = used.some(({ measured }) => measured.electricalPower !== null) ? electrical.filter(isExact) : [];
  const ofShaft = "shaft power, C_P, K_Q and the static merit";
  return [
    ...(powerSource === "torque" && isExact("torque") ? [exact(["torque"], ofShaft)] : []),
    ...(drawn.length > 0
      ? [exact(drawn, powerSource === "motorConstants" ? `electrical power, ${ofShaft}` : "electrical power")]
      : []),
  ];
}

function exact(roles: readonly ColumnRole[], lacking: string): Warning {
  const names = roles.map((role) => ROLE_NAMES[role]).join(" and ");
  return warning({
    code: "bench.meters-exact",
    where: names,
    found: `no accuracy is stated for the ${names} readings, so they were taken as exact and the intervals of ${lacking} do not contain the error of the ${roles.length > 1 ? "meters" : "meter"}`,
    needed: "the relative standard uncertainty of the readings",
    mend: "Compare with a better meter, or take it from the maker's data sheet, often 0.5 to 3 %, and state it",
  });
}

function largeUncertainties({ channels }: RunFacts): Warning[] {
  const all: readonly (Channel | undefined)[] = Object.values(channels);
  return all.flatMap((channel) => {
    if (!channel || channel.calibration !== null || channel.relativeUncertainty <= LARGEST_MEANT) return [];
    const { relativeUncertainty: stated, header, role } = channel;
    return [
      warning({
        code: "bench.large-calibration-uncertainty",
        where: `column ${header}`,
        found: `the ${ROLE_NAMES[role]} is stated to be off by ${formatPercent(stated)}, one standard uncertainty`,
        needed: `under ${formatPercent(LARGEST_MEANT)}, as almost any meter has`,
        mend: `Was ${formatPercent(stated / 100)} meant? Write the per cent sign`,
      }),
    ];
  });
}

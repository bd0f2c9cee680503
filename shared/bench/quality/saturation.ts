import type { QualityCheck } from "../../model/quality.ts";
import { moments } from "../../numeric/moments.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { MeasuredPlateau } from "../measuredPlateau.ts";
import { remembered } from "../remembered.ts";
import type { RunFacts } from "../runFacts.ts";
import { heldStretches } from "./heldStretches.ts";
import { flagged, inPercent, passed, percentText, unjudged } from "./verdict.ts";

/** Part of a plateau's readings at the greatest value from which on they pile up. Common practice, no source. */
const PILE = 0.05;
const FEWEST_READINGS = 20;
/** Steps of the reading that noise must span before a pile at its edge means anything. */
const TELLING_SPREAD = 1;
/** Thrust that should separate two plateaus which read the same, as a part. */
const APART = 0.1;

const SUBJECT = {
  code: "bench.load-cell-saturation",
  name: "Load cell at its end",
  limit: `fewer than ${percentText(PILE)} of a plateau's readings at the greatest value, and no reading beyond the stated capacity`,
};

interface Pile {
  readonly held: MeasuredPlateau;
  /** Part of its readings at the greatest value of the log. */
  readonly share: number;
  readonly readings: number;
  /** Part of its readings in the next lower class of readings. */
  readonly below: number;
  /** Standard deviation in steps of the reading. */
  readonly spread: number;
}

/** Do readings stop at a greatest value, as at an end stop or the top of a converter? */
export function saturation(facts: RunFacts): QualityCheck {
  const { scale, shift } = facts.channels.thrust;
  const direction = Math.sign(facts.thrust.fit.coefficient * scale) || 1;
  const written = greatestReading(facts, direction);
  const greatest = written * scale + shift;
  const capacity = facts.recipe.stand?.loadCellCapacity;
  const part = capacity === undefined ? null : Math.abs(greatest) / capacity;
  const piles = heldStretches(facts).map((held) => pileAt(held, facts, written, direction));
  const worst = piles.reduce((a, b) => (b.share > a.share ? b : a));
  const ofCapacity = part === null ? "" : `, ${percentText(part)} of the stated capacity reached`;
  const measured = inPercent(worst.share, { after: ` of a plateau's readings at the greatest value${ofCapacity}` });
  if (piles.every(({ readings }) => readings < FEWEST_READINGS) && part === null) {
    return unjudged(
      SUBJECT,
      `No plateau has the ${FEWEST_READINGS} readings that a pile-up needs, and the capacity is not stated.`,
      "State the capacity of the scale or load cell with the data of the stand.",
    );
  }
  const stopped = cutOff(piles) ?? flatTop(piles);
  if (!stopped && (part === null || part <= 1)) {
    return passed(SUBJECT, measured, "The readings do not pile up at their greatest value.");
  }
  const reading = `${formatNumber(Math.abs(greatest))}\u202fN (zero included)`;
  return flagged(SUBJECT, {
    measured,
    sentence: stopped
      ? `Readings stop at ${reading}: thrust beyond that was not recorded.`
      : `The greatest reading, ${reading}, is beyond the stated capacity of ${formatNumber(capacity!)}\u202fN.`,
    mend: "Shorten the lever on the cell's side, take a cell or range for more load, look for an end stop, and leave the plateaus that stopped out of the fit.",
  });
}

/** The greatest reading in the direction of thrust among held stretches, as written: a glitch elsewhere is no end stop. */
function greatestReading(facts: RunFacts, direction: number): number {
  let greatest = -Infinity;
  for (const held of heldStretches(facts)) {
    const own = remembered(held.written, { stage: "greatest", dependsOn: direction }, () => {
      const readings = keptReadings(held, facts);
      let most = -Infinity;
      for (let i = 0; i < readings.length; i++) most = Math.max(most, direction * readings[i]!);
      return most;
    });
    greatest = Math.max(greatest, own);
  }
  return direction * greatest;
}

/** Thrust of a stretch as written, with its zero still in it, without missing cells and glitches. */
function keptReadings({ span, written }: MeasuredPlateau, { channels }: Pick<RunFacts, "channels">): Float64Array {
  const kept = channels.thrust.raw.slice(span.from, span.to);
  const { thrust } = written.readings;
  let count = 0;
  for (let i = 0; i < kept.length; i++) if (!Number.isNaN(thrust[i]!)) kept[count++] = kept[i]!;
  return kept.subarray(0, count);
}

function pileAt(held: MeasuredPlateau, facts: RunFacts, greatest: number, direction: number): Pile {
  const dependsOn = [greatest, direction];
  return remembered(held.written, { stage: "pile", dependsOn }, () => pileOf(held, facts, greatest, direction));
}

function pileOf(held: MeasuredPlateau, facts: RunFacts, greatest: number, direction: number): Pile {
  const { channels } = facts;
  const readings = keptReadings(held, facts);
  const tiny = 1e-9 * Math.max(1, Math.abs(greatest));
  const step = Math.max(channels.thrust.writtenStep, tiny);
  const from = (steps: number) => {
    let count = 0;
    for (let i = 0; i < readings.length; i++) {
      if (direction * (greatest - readings[i]!) <= steps * step + tiny) count++;
    }
    return count / readings.length;
  };
  const share = from(0.5);
  const spread = readings.length > 1 ? moments(readings).standardDeviation / step : 0;
  const enough = readings.length >= FEWEST_READINGS;
  return { held, readings: readings.length, share: enough ? share : 0, below: from(1.5) - share, spread };
}

/** Noise whose upper side is missing: more readings in the last class than in the one before it. */
function cutOff(piles: readonly Pile[]): Pile | undefined {
  return piles.find(
    ({ share, below, spread }) => share >= PILE && share < 1 && share > 2 * below && spread >= TELLING_SPREAD,
  );
}

/** Two speeds that should differ in thrust and read the same greatest value all along. */
function flatTop(piles: readonly Pile[]): Pile | undefined {
  const flat = piles.filter(({ share }) => share > 0.9);
  const squares = flat.map(({ held }) => held.rotationRate.mean ** 2);
  return squares.length >= 2 && Math.max(...squares) > (1 + APART) * Math.min(...squares) ? flat[0] : silentTop(piles);
}

/** A plateau without any noise at the greatest value, where the others have noise. */
function silentTop(piles: readonly Pile[]): Pile | undefined {
  const noisy = piles.filter(({ share, spread }) => share === 0 && spread >= TELLING_SPREAD);
  return noisy.length >= 2 ? piles.find(({ share }) => share === 1) : undefined;
}

import { fluidProperties } from "../../fluid/fluidProperties.ts";
import type { SeriesPropeller, SeriesWithoutPitch } from "../../model/seriesPropeller.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../../propeller/coefficients.ts";
import { pitchRange } from "../../propeller/series/seriesRange.ts";
import { staticMerit } from "../../propeller/staticMerit.ts";
import { seriesPropeller } from "../boxContents.ts";
import { emptyInputs, type Inputs } from "../inputs.ts";
import type { PropellerRecord } from "../partRecords.ts";
import { propellerRecord } from "../propellerRecord.ts";
import { RateSolver } from "../rateSolver.ts";
import type { Making } from "../recordMaking.ts";

/** Steps that diameter and pitch are walked in. */
const DIAMETERS = 15;
const PITCHES = 18;

/**
 * The propellers of one series in every size and pitch, as a search walks them. Those on the grid are made once for all
 * motors.
 */
export class SeriesSizes {
  readonly pitches: readonly number[];
  readonly diameters: readonly number[];
  private readonly grid = new Map<string, PropellerRecord | null>();
  private readonly pitchMade = new Map<number, PropellerRecord | null>();
  private readonly solver = new RateSolver();
  private readonly inputs: Inputs;
  /** Coefficients do not change with the size, and nothing in the water hangs on it. */
  private readonly isPlain: boolean;

  constructor(
    private readonly making: Making,
    readonly series: SeriesWithoutPitch,
    [least, greatest]: readonly [number, number],
  ) {
    this.pitches = steps(pitchRange(series), PITCHES);
    this.diameters = steps([least, greatest], DIAMETERS);
    const { requirement, table } = making;
    this.isPlain = requirement.depth === undefined && table.duties.every(({ duty }) => duty !== "astern");
    this.inputs = emptyInputs(requirement, fluidProperties(requirement.water).density);
  }

  /** One on the grid; null where the polynomials give no propeller. */
  onGrid(d: number, p: number): PropellerRecord | null {
    const key = `${d} ${p}`;
    const known = this.grid.get(key);
    if (known !== undefined) return known;
    const made = this.at(this.diameters[d]!, this.pitches[p]!);
    this.grid.set(key, made);
    return made;
  }

  /** For a search: quick where neither the water nor the astern side bounds the propeller. */
  at(diameter: number, pitchRatio: number): PropellerRecord | null {
    const first = this.ofPitch(pitchRatio);
    if (first === null) return null;
    return this.isPlain ? this.resized(first, diameter) : this.made(diameter, pitchRatio);
  }

  /** The whole record, as any other propeller has it. */
  made(diameter: number, pitchRatio: number): PropellerRecord {
    const series = { ...this.series, pitchRatio } as SeriesPropeller;
    return propellerRecord(this.making, seriesPropeller(series, diameter).propeller);
  }

  /** The propeller of a pitch in some size; null where the polynomials promise what no propeller can do. */
  private ofPitch(pitchRatio: number): PropellerRecord | null {
    const known = this.pitchMade.get(pitchRatio);
    if (known !== undefined) return known;
    const record = this.made(this.diameters.at(-1)!, pitchRatio);
    const { thrustCoefficient, torqueCoefficient } = record.atRest;
    const powerCoefficient = torqueCoefficient / TORQUE_OVER_POWER_COEFFICIENT;
    const isOpen = this.series.family === "wageningen-b";
    const isReal = !isOpen || staticMerit({ thrustCoefficient, powerCoefficient }) < 1;
    this.pitchMade.set(pitchRatio, isReal ? record : null);
    return isReal ? record : null;
  }

  /** The same coefficients in another size; the rates that give the demanded thrusts follow. */
  private resized(record: PropellerRecord, diameter: number): PropellerRecord {
    const { solver, inputs } = this;
    inputs.diameter = diameter;
    const rates = record.curves.map((curve, d) => {
      if (curve === null) return record.rates[d]!;
      solver.fill(inputs, curve, curve.advance);
      return solver.rateForThrust(this.making.table.duties[d]!.thrust);
    });
    return { ...record, diameter, rates };
  }
}

function steps([low, high]: readonly [number, number], count: number): number[] {
  return Array.from({ length: count + 1 }, (_, k) => low + (k * (high - low)) / count);
}

import type { LogReading } from "../../../shared/model/reading.ts";

/** Thrust coefficient behind every log here: T = K_T ρ n² D⁴ with D = 76 mm and ρ = 998.6 kg/m³ (fresh water of 18 °C). */
export const TRUE_THRUST_COEFFICIENT = 0.2;

const DENSITY = 998.6;

const DIAMETER = 0.076;

export const GRAM_FORCE = 0.00980665;

/** One reading of the invented stand, in SI units but for the command. */
export interface Moment {
  readonly t: number;
  readonly pulse: number;
  readonly thrust: number;
  readonly rpm: number;
  readonly volts: number;
  readonly amps: number;
}

const STEPS = [0, 1200, 0, 1500, 0, 1900, 0, 2400, 0];

export const PER_STEP = 80;

/** 10 readings a second, a rest between steps; small waves stand for noise. */
export const MOMENTS: readonly Moment[] = STEPS.flatMap((rpm, step) =>
  Array.from({ length: PER_STEP }, (_, k): Moment => {
    const i = step * PER_STEP + k;
    const wave = Math.sin(i * 2.399963);
    const amps = rpm === 0 ? 0.04 : 0.4 + 2.5 * (rpm / 2400) ** 3 + 0.005 * wave;
    return {
      t: i / 10,
      pulse: rpm === 0 ? 1500 : 1500 + rpm / 8,
      thrust: TRUE_THRUST_COEFFICIENT * DENSITY * (rpm / 60) ** 2 * DIAMETER ** 4 + 0.01 * wave,
      rpm: rpm === 0 ? 0 : rpm + 3 * Math.sin(i * 1.7),
      volts: 15 - 0.05 * amps,
      amps,
    };
  }),
);

export const HEADER = ["time (s)", "throttle (us)", "thrust (N)", "speed (rpm)", "voltage (V)", "current (A)"];

export const cellsOf = ({ t, pulse, thrust, rpm, volts, amps }: Moment) => [
  t.toFixed(1),
  pulse.toFixed(0),
  thrust.toFixed(3),
  rpm.toFixed(0),
  volts.toFixed(3),
  amps.toFixed(3),
];

export const ROWS = MOMENTS.map(cellsOf);

interface Written {
  readonly header?: readonly string[];
  readonly rows?: readonly (readonly string[])[];
  readonly between?: string;
  readonly lineEnd?: string;
}

export const written = ({ header = HEADER, rows = ROWS, between = ",", lineEnd = "\n" }: Written = {}) =>
  `${[header, ...rows].map((row) => row.join(between)).join(lineEnd)}${lineEnd}`;

export const withCell = (column: number, cell: (old: string, moment: Moment, row: number) => string) =>
  MOMENTS.map((moment, row) => ROWS[row]!.map((old, c) => (c === column ? cell(old, moment, row) : old)));

export const lines = written().split("\n");

export const utf8 = (text: string) => new TextEncoder().encode(text);

export interface BrokenLog {
  readonly name: string;
  /** What is wrong with it, for the table of logs. */
  readonly what: string;
  readonly bytes: Uint8Array;
  /** A second log of the same run. */
  readonly companion?: Uint8Array;
  /** What a person states after reading what the page asks. */
  readonly stated?: { readonly [column: string]: string };
  /** How the person has it read instead. */
  readonly reading?: LogReading;
  readonly polePairs?: number;
  /** Codes of repairs and warnings that must be told. */
  readonly told: readonly string[];
  /** The answer has this sign. */
  readonly sign?: -1;
  /** It is refused with this code, at this place. */
  readonly refused?: { readonly code: string; readonly where: string };
}

export const half = Math.floor(lines.length / 2);

export const gramsOf = ({ thrust }: Moment) => (thrust / GRAM_FORCE).toFixed(1);

import type { BudgetRow, DoubtSource, Improvement } from "../model/budget.ts";
import { combined } from "../numeric/combined.ts";
import { bracketedRoot } from "../numeric/rootFinding.ts";
import { formatNumber, formatPercent } from "../quantity/format.ts";

/** The part of a budget that says where an improvement would act. */
export interface HalvingRequest {
  readonly rows: readonly BudgetRow[];
  /** Plateaus in the fit. */
  readonly plateaus: number;
  /** They miss the law by a trend, not by chance: more of them do not make the doubt smaller. */
  readonly missesByTrend?: boolean;
}

/** Something a builder can do, and the rows that it makes smaller. */
interface Act {
  readonly rows: readonly BudgetRow[];
  /** More readings also make the scatter better known: degrees of freedom grow as the factor falls by its square. */
  readonly byAveraging: boolean;
  /** Less than this is not practical: ten times the readings, or twenty times as exact. Common practice, no source. */
  readonly least: number;
  readonly words: (factor: number) => string;
}

/**
 * The single improvement that brings the 95 % interval to half its width with the least effort, or the two that do so
 * together. Only one cause is changed at a time, and the coverage factor follows the degrees of freedom.
 *
 * Source   the interval as JCGM 100:2008, G.4; the search is a root of U(f) - U/2 in the factor f on the cause.
 */
export function whatHalves(request: HalvingRequest): Improvement {
  const acts = actsOf(request);
  const total = halfWidth(request.rows);
  if (total === 0 || (acts.length === 0 && !request.missesByTrend)) {
    return { sentence: "There is no doubt to make smaller.", causes: [], single: false, factor: null };
  }
  const single = acts
    .map((act) => ({ act, factor: factorFor(request.rows, [act]) }))
    .filter(({ act, factor }) => factor !== null && factor >= act.least)
    .sort((a, b) => b.factor! - a.factor!)[0];
  if (single) {
    const words = single.act.words(single.factor!);
    return {
      sentence: `${capital(words)}: that alone halves the interval.`,
      causes: namesOf([single.act]),
      single: true,
      factor: single.factor,
    };
  }
  return request.missesByTrend ? trendFirst(request.rows) : byTwo(request.rows, acts);
}

/** What to do where the plateaus miss their law by a trend and no single act beside more plateaus is enough. */
function trendFirst(rows: readonly BudgetRow[]): Improvement {
  return {
    sentence:
      "First find why the coefficient changes with the rotation rate; the notes name likely causes. More plateaus would not help: what they miss the law by is a trend, not chance.",
    causes: rows.filter(({ source }) => source === "plateauSpread").map(({ name }) => name),
    single: false,
    factor: null,
  };
}

function byTwo(rows: readonly BudgetRow[], acts: readonly Act[]): Improvement {
  const variance = (act: Act) => act.rows.reduce((sum, row) => sum + row.share, 0);
  const first = [...acts].sort((a, b) => variance(b) - variance(a))[0]!;
  const apart = acts.filter((act) => act !== first && !act.rows.some((row) => first.rows.includes(row)));
  const second = apart.sort((a, b) => variance(b) - variance(a))[0];
  const two = second ? [first, second] : [first];
  const factor = factorFor(rows, two);
  const causes = namesOf(two);
  if (factor !== null && factor >= Math.max(...two.map((act) => act.least))) {
    const words = two.map((act) => act.words(factor)).join(", and ");
    return {
      sentence: `No single improvement halves the interval; two together do: ${words}.`,
      causes,
      single: false,
      factor,
    };
  }
  // Of the standard uncertainty: what is left of an interval may be wide only because little of it is known well.
  const left = formatNumber((100 * doubtOf(scaledRows(rows, two, 0))) / doubtOf(rows), 2);
  const without = two.map((act) => nameOf(act)).join(" and ");
  return {
    sentence: `No one or two steps are enough to halve the interval. If ${without} were known exactly, ${left} % of the standard uncertainty would still be left.`,
    causes,
    single: false,
    factor: null,
  };
}

/** Factor on the rows of `acts` that halves the interval; null where taking them away altogether does not. */
function factorFor(rows: readonly BudgetRow[], acts: readonly Act[]): number | null {
  const goal = halfWidth(rows) / 2;
  const over = (factor: number) => halfWidth(scaledRows(rows, acts, factor)) - goal;
  if (over(0) > 0) return null;
  const { root, converged } = bracketedRoot(over, 0, 1, { relativeTolerance: 1e-6, maximumSteps: 100 });
  return converged ? root : null;
}

function scaledRows(rows: readonly BudgetRow[], acts: readonly Act[], factor: number): BudgetRow[] {
  return rows.map((row) => {
    const act = acts.find((one) => one.rows.includes(row));
    if (!act) return row;
    const { degreesOfFreedom: known } = row;
    const degreesOfFreedom = act.byAveraging && known !== null ? known / Math.max(factor, 1e-6) ** 2 : known;
    return { ...row, standardUncertainty: factor * row.standardUncertainty, degreesOfFreedom };
  });
}

function doubtOf(rows: readonly BudgetRow[]): number {
  return combined(rows.map((row) => ({ ...row, degreesOfFreedom: Infinity }))).standardUncertainty;
}

function halfWidth(rows: readonly BudgetRow[]): number {
  const parts = rows.map((row) => ({ ...row, degreesOfFreedom: row.degreesOfFreedom ?? Infinity }));
  return combined(parts).expanded95;
}

const MOST_READINGS = 1 / Math.sqrt(10);
const MOST_EXACT = 1 / 20;

const PLATEAU_SOURCES: readonly DoubtSource[] = [
  "plateauScatter",
  "plateauSpread",
  "plateauResolution",
  "rateResolution",
  "repeatability",
];

function actsOf({ rows, plateaus, missesByTrend }: HalvingRequest): Act[] {
  const of = (...sources: readonly DoubtSource[]) => rows.filter((row) => sources.includes(row.source));
  const times = (factor: number) => formatNumber(1 / factor ** 2, 2);
  const averaged = { byAveraging: true, least: MOST_READINGS };
  const acts: Act[] = [
    {
      ...averaged,
      rows: missesByTrend ? [] : of(...PLATEAU_SOURCES),
      words: (factor) => `run ${Math.ceil(plateaus / factor ** 2)} plateaus in place of ${plateaus}`,
    },
    { ...averaged, rows: of("plateauScatter"), words: (factor) => `hold each plateau ${times(factor)} times as long` },
    { ...averaged, rows: of("tareReadings"), words: (factor) => `rest ${times(factor)} times as long for the zero` },
    ...rows.filter(({ source }) => EXACT.includes(source)).map(exactAct),
  ];
  return acts.filter((act) => act.rows.length > 0);
}

/** Causes that are made smaller one by one, by measuring or reading something more exactly. */
const EXACT: readonly DoubtSource[] = [
  ...(["plateauResolution", "rateResolution", "tareResolution", "tareDrift"] as const),
  ...(["calibration", "diameter", "fluid", "other"] as const),
];

function exactAct(row: BudgetRow): Act {
  const now = inWords(row, 1);
  return {
    rows: [row],
    byAveraging: false,
    least: MOST_EXACT,
    words: (factor) => {
      const to = inWords(row, factor);
      if (to === null || now === null) return `bring the ${row.name} down to ${formatPercent(factor)} of what it is`;
      return `${VERBS[row.source] ?? "know"} ${objectOf(row)} to ${to} (now ${now}, standard uncertainty)`;
    },
  };
}

const VERBS: Partial<Record<DoubtSource, string>> = {
  calibration: "calibrate",
  diameter: "measure",
  fluid: "measure",
  tareDrift: "keep",
  plateauResolution: "read",
  rateResolution: "read",
  tareResolution: "read",
};

function objectOf({ source, name }: BudgetRow): string {
  if (source === "calibration") return name.replace(/^calibration of /, "");
  if (source === "fluid") return name.replace(/^.*: its /, "the fluid's ");
  if (source === "plateauResolution") return name.replace(/^steps of /, "");
  if (source === "rateResolution") return "the rotation rate";
  if (source === "tareDrift") return `the ${name.replace(": its", "'s")}`;
  return source === "tareResolution" ? `the ${name.replace(/: steps.*$/, "")}` : `the ${name}`;
}

/** Units that an input of a budget is shown in: SI value of one of it. */
const SHOWN: Record<string, { symbol: string; factor: number }> = {
  "1": { symbol: "%", factor: 0.01 },
  m: { symbol: "mm", factor: 1e-3 },
  Pa: { symbol: "hPa", factor: 100 },
};

/** The input's standard uncertainty times `factor`: "0.40 %", "0.05 mm"; null where only its effect is known. */
export function inWords({ inputUncertainty, inputUnit }: BudgetRow, factor: number): string | null {
  if (inputUnit === "") return null;
  const unit = SHOWN[inputUnit] ?? { symbol: inputUnit, factor: 1 };
  return `${formatNumber((factor * inputUncertainty) / unit.factor, 2)}\u202f${unit.symbol}`;
}

function nameOf({ rows }: Act): string {
  return rows.length > 1 ? "the plateaus" : `“${rows[0]!.name}”`;
}

const namesOf = (acts: readonly Act[]) => acts.flatMap(({ rows }) => rows.map(({ name }) => name));
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

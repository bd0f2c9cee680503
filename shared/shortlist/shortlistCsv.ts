import { POINT_QUANTITIES, type PointQuantity, type Shortlist, type ShortlistRow } from "../model/shortlistResult.ts";
import { csvText } from "../quantity/csvCell.ts";

/** The ranked combinations as comma-separated text (RFC 4180): SI units, each head with its unit. */
export function shortlistCsv({ rows }: Pick<Shortlist, "rows">): string {
  const points = [...new Set(rows.flatMap((row) => row.points.map(({ duty }) => duty)))];
  const head = [
    ...["Rank", "Score", "Motor", "Controller", "Supply", "Gear", "Propeller", "Mass (kg)", "Price", "Endurance (s)"],
    "Probability of the least certain demand",
    ...points.flatMap((duty) => [
      ...POINT_COLUMNS.map(({ title }) => `${DUTY_TITLES[duty]}: ${title}`),
      ...POINT_QUANTITIES.map((quantity) => `${DUTY_TITLES[duty]}: standard uncertainty of ${DOUBT_TITLES[quantity]}`),
    ]),
    "Tightest demand",
  ];
  return csvText([head, ...rows.map((row) => cellsOf(row, points))]);
}

type Point = ShortlistRow["points"][number];

const DUTY_TITLES: Readonly<Record<Point["duty"], string>> = {
  ahead: "Ahead at rest",
  astern: "Astern at rest",
  atSpeed: "At speed",
  meanThrust: "At the mean thrust",
};

const POINT_COLUMNS: readonly { readonly title: string; readonly of: (point: Point) => number | string | null }[] = [
  { title: "thrust (N)", of: ({ thrust }) => thrust },
  { title: "greatest thrust within limits (N)", of: ({ greatestThrust }) => greatestThrust },
  { title: "bounded by", of: ({ governing }) => governing },
  { title: "throttle", of: ({ throttle }) => throttle },
  { title: "rotation rate (rev/s)", of: ({ rotationRate }) => rotationRate },
  { title: "motor current (A)", of: ({ motorCurrent }) => motorCurrent },
  { title: "supply current (A)", of: ({ supplyCurrent }) => supplyCurrent },
  { title: "supply voltage (V)", of: ({ supplyVoltage }) => supplyVoltage },
  { title: "winding temperature (K)", of: ({ windingTemperature }) => windingTemperature },
  { title: "electrical power (W)", of: ({ electricalPower }) => electricalPower },
  { title: "thrust over power (N/W)", of: ({ thrustPerPower }) => thrustPerPower },
  { title: "tip speed (m/s)", of: ({ tipSpeed }) => tipSpeed },
];

const DOUBT_TITLES: Readonly<Record<PointQuantity, string>> = {
  rotationRate: "rotation rate (rev/s)",
  throttle: "throttle",
  motorCurrent: "motor current (A)",
  windingTemperature: "winding temperature (K)",
  supplyCurrent: "supply current (A)",
  supplyVoltage: "supply voltage (V)",
  electricalPower: "electrical power (W)",
  thrustPerPower: "thrust over power (N/W)",
  tipSpeed: "tip speed (m/s)",
  greatestThrust: "greatest thrust (N)",
};

function cellsOf(row: ShortlistRow, duties: readonly Point["duty"][]): (string | number | null)[] {
  const { motor, controller, supply, gear, propeller } = row.combination;
  const ofPoints = duties.flatMap((duty) => {
    const point = row.points.find((one) => one.duty === duty);
    return [
      ...POINT_COLUMNS.map(({ of }) => (point === undefined ? null : of(point))),
      ...POINT_QUANTITIES.map((quantity) => point?.standardUncertainties?.[quantity] ?? null),
    ];
  });
  return [
    ...[row.rank, row.score, motor, controller, supply, gear, propeller, row.mass, row.price, row.endurance],
    row.probability,
    ...ofPoints,
    row.tightest,
  ];
}

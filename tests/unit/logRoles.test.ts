import { expect, test } from "vitest";
import { guessRoles } from "../../shared/log/guessRoles.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { requireRoleUnit, roleOfText } from "../../shared/log/roleUnits.ts";

/** An invented run up the throttle in five steps: thrust grows with the square of the rotation rate. */
const run = Array.from({ length: 60 }, (_, i) => {
  const pulse = 1000 + 100 * Math.floor(i / 10);
  const rpm = Math.round((pulse - 1000) * 5 + (i % 3));
  const thrust = rpm ** 2 * 2e-6;
  const current = thrust ** 1.5 * 0.3;
  const voltage = 14.8 - 0.05 * current;
  return { time: i / 10, pulse, rpm, thrust, current, voltage };
});
type Sample = (typeof run)[number];

const guessesOf = (header: string, row: (sample: Sample) => readonly (number | string)[]) => {
  const lines = run.map((sample) => row(sample).join("\t"));
  const text = [...(header === "" ? [] : [header.replaceAll("|", "\t")]), ...lines].join("\n");
  return guessRoles(readLog(new TextEncoder().encode(`${text}\n`), "stand.txt"));
};
const told = (guesses: ReturnType<typeof guessesOf>) =>
  guesses.map(({ role, unit, sure }) => `${role} ${unit}${sure ? "" : " ?"}`);

const plain = ({ time, pulse, thrust, rpm, voltage, current }: Sample) => [
  time.toFixed(1),
  pulse,
  thrust.toFixed(3),
  rpm,
  voltage.toFixed(2),
  current.toFixed(2),
];

test.each([
  {
    header: "time_s|throttle_us|thrust_N|rpm|voltage_V|current_A",
    roles: ["time s", "command us", "thrust N", "rotationRate rpm", "voltage V", "current A"],
  },
  {
    header: "Elapsed (s)|ESC pulse (µs)|Load cell [N]|Motor speed (1/min)|Battery / V|Amps",
    roles: ["time s", "command us", "thrust N", "rotationRate rpm", "voltage V", "current A"],
  },
  {
    header: "Zeit|Gas|Schub in N|Drehzahl|Spannung|Strom",
    roles: ["time s", "command us", "thrust N", "rotationRate rpm", "voltage V", "current A"],
  },
  {
    header: "temps (s)|consigne|poussée (N)|régime (tr/min)|tension (V)|courant (A)",
    roles: ["time s", "command us", "thrust N", "rotationRate rpm", "voltage V", "current A"],
  },
  {
    header: "tiempo|mando|empuje (N)|revoluciones|voltaje|corriente",
    roles: ["time s", "command us", "thrust N", "rotationRate rpm", "voltage V", "current A"],
  },
  {
    header: "tijd|pwm|stuwkracht (N)|toerental|spanning|stroom",
    roles: ["time s", "command us", "thrust N", "rotationRate rpm", "voltage V", "current A"],
  },
  {
    header: "t|pwm|F|n|U|I",
    roles: ["time s", "command us", "thrust N ?", "rotationRate rpm", "voltage V", "current A"],
  },
  {
    header: "s|us|gf|erpm|V|A",
    roles: ["time s", "command us", "thrust gf", "rotationRate erpm", "voltage V", "current A"],
  },
])("$header", ({ header, roles }) => {
  expect(told(guessesOf(header, plain))).toEqual(roles);
});

test("without a header only the clear patterns get a role, and none but time is sure", () => {
  const guesses = guessesOf("", plain);
  expect(told(guesses).slice(0, 2)).toEqual(["time s", "command us ?"]);
  expect(guesses[4]).toMatchObject({ role: "voltage", sure: false });
  expect(guesses.filter(({ sure }) => sure)).toHaveLength(1);
});

test("without a header thrust and current are told apart by the power of rotation rate they grow with", () => {
  expect(told(guessesOf("", plain)).slice(2)).toEqual([
    "thrust N ?",
    "rotationRate rpm ?",
    "voltage V ?",
    "current A ?",
  ]);
});

test.each([
  { counts: 427, way: "rise" },
  { counts: -427, way: "fall" },
])("counts of a load cell that $way from any zero are thrust by the power they grow with above rest", ({ counts }) => {
  const log = guessesOf("", ({ time, thrust, rpm, voltage, current }) => [
    time.toFixed(1),
    (84213 + counts * thrust).toFixed(0),
    rpm,
    voltage.toFixed(2),
    current.toFixed(2),
  ]);
  expect(told(log)[1]).toMatch(/^thrust \S+ \?$/);
  expect(told(log)[4]).toBe("current A ?");
});

test("thrust without a unit offers newton, gram and kilogram with what each would mean", () => {
  const thrust = guessesOf("time|thrust|rpm", ({ time, thrust, rpm }) => [time, (thrust * 100).toFixed(0), rpm])[1]!;
  expect(thrust).toMatchObject({ role: "thrust", unit: "g", sure: false });
  expect(thrust.reason).toContain("no unit");
  expect(thrust.alternatives.map(({ unit, implies }) => `${unit}: ${implies}`)).toContain(
    "N: The largest thrust would be 1252 N.",
  );
});

test("a newton column beyond any small thruster is doubted and gram is offered", () => {
  const thrust = guessesOf("time|thrust (N)|rpm", ({ time, thrust, rpm }) => [
    time,
    (thrust * 100).toFixed(0),
    rpm,
  ])[1]!;
  expect(thrust).toMatchObject({ unit: "N", sure: false });
  expect(thrust.alternatives.map(({ unit }) => unit)).toEqual(["g"]);
});

test("rpm too fast for water is taken as electrical turns, with the other reading offered", () => {
  const rate = guessesOf("time|thrust (N)|rpm", ({ time, thrust, rpm }) => [time, thrust, rpm * 14])[2]!;
  expect(rate).toMatchObject({ role: "rotationRate", unit: "erpm", sure: false });
  expect(rate.alternatives.map(({ unit }) => unit)).toEqual(["rpm"]);
});

test.each([
  { header: "time|thrust (N)|electrical speed (rpm)", unit: "erpm", sure: false },
  { header: "time|thrust (N)|eRPM", unit: "erpm", sure: true },
  { header: "time|thrust (N)|Hz", unit: "rev/s", sure: true },
])("the rotation rate of $header is in $unit", ({ header, unit, sure }) => {
  const rows = guessesOf(header, ({ time, thrust, rpm }) => [time, thrust, unit === "rev/s" ? rpm / 60 : rpm]);
  expect(rows[2]).toMatchObject({ role: "rotationRate", unit, sure });
});

test("no role is given twice; the second column says which one was taken", () => {
  const guesses = guessesOf("time|thrust (N)|thrust_raw|rpm", ({ time, thrust, rpm }) => [
    time,
    thrust,
    thrust * 1000,
    rpm,
  ]);
  expect(told(guesses)).toEqual(["time s", "thrust N", "ignore 1", "rotationRate rpm"]);
  expect(guesses[2]!.reason).toContain('column 2 "thrust (N)"');
  expect(guesses[2]!.alternatives.map(({ role }) => role)).toEqual(["thrust"]);
});

test("two load cells of the same kind are both in doubt", () => {
  const guesses = guessesOf("time|left load cell (kg)|right load cell (kg)|rpm", ({ time, thrust, rpm }) => [
    time,
    thrust / 20,
    thrust / 19,
    rpm,
  ]);
  expect(told(guesses)).toEqual(["time s", "thrust kg ?", "ignore 1 ?", "rotationRate rpm"]);
});

test.each([
  { header: "efficiency (g/W)" },
  { header: "shaft power (W)" },
  { header: "sample no" },
  { header: "charge (mAh)" },
])("$header is none of the quantities of a stand", ({ header }) => {
  const guesses = guessesOf(`time|thrust (N)|rpm|${header}`, ({ time, thrust, rpm }) => [
    time,
    thrust,
    rpm,
    thrust / 3,
  ]);
  expect(guesses[3]!.role).toBe("ignore");
});

test.each([
  { header: "throttle (%)", of: (pulse: number) => (pulse - 1000) / 10, unit: "%" },
  { header: "throttle", of: (pulse: number) => (pulse - 1000) / 600, unit: "1" },
  { header: "throttle", of: (pulse: number) => pulse, unit: "us" },
  { header: "duty", of: (pulse: number) => (pulse - 1000) / 5, unit: "%" },
])("a command of $header is in $unit", ({ header, of, unit }) => {
  const guesses = guessesOf(`time|${header}|thrust (N)`, ({ time, pulse, thrust }) => [time, of(pulse), thrust]);
  expect(guesses[1]).toMatchObject({ role: "command", unit });
});

test.each([
  { header: "time", step: 0.02, unit: "s" },
  { header: "time", step: 20, unit: "ms" },
  { header: "time", step: 20_000, unit: "us" },
  { header: "millis", step: 1, unit: "ms" },
])("rows $step apart under $header are in $unit", ({ header, step, unit }) => {
  const guesses = guessesOf(`${header}|thrust (N)`, ({ time, thrust }) => [Math.round(time * 10) * step, thrust]);
  expect(guesses[0]).toMatchObject({ role: "time", unit });
});

test("uncalibrated counts are thrust in doubt, and the reason says that a factor is needed", () => {
  const thrust = guessesOf("time|load cell [counts]|rpm", ({ time, thrust, rpm }) => [time, thrust * 1e4, rpm])[1]!;
  expect(thrust).toMatchObject({ role: "thrust", sure: false });
  expect(thrust.reason).toContain("calibration factor");
});

test.each([
  { text: "rpm", role: "rotationRate" },
  { text: "erpm", role: "rotationRate" },
  { text: "thrust", role: "thrust" },
  { text: "load", role: "thrust" },
  { text: "kg", role: "thrust" },
  { text: "N", role: "thrust" },
  { text: "volts", role: "voltage" },
  { text: "A", role: "current" },
  { text: "watts", role: "electricalPower" },
  { text: "rotation rate", role: "rotationRate" },
  { text: "electricalPower", role: "electricalPower" },
  { text: "throttle command", role: "command" },
  { text: "skip", role: "ignore" },
  { text: "banana", role: undefined },
  { text: "", role: undefined },
])("a person who types $text means $role", ({ text, role }) => {
  expect(roleOfText(text)).toBe(role);
});

test.each([
  { role: "command", text: "µs", unit: "us" },
  { role: "command", text: "percent", unit: "%" },
  { role: "command", text: "", unit: "1" },
  { role: "thrust", text: "grams", unit: "g" },
  { role: "rotationRate", text: "U/min", unit: "rpm" },
] as const)("the unit $text of $role is $unit", ({ role, text, unit }) => {
  expect(requireRoleUnit(role, text)).toBe(unit);
});

test.each([
  { role: "command", text: "kg", code: "log.command-unit" },
  { role: "thrust", text: "rpm", code: "quantity.wrong-dimension" },
] as const)("the unit $text of $role is refused: $code", ({ role, text, code }) => {
  expect(() => requireRoleUnit(role, text)).toThrow(
    expect.objectContaining({ problem: expect.objectContaining({ code }) }),
  );
});

test.each([
  ["speed (rpm x1000)", "krpm"],
  ["rpm_x1000", "krpm"],
  ["speed (rpm x100)", "100 rpm"],
  ["speed [deg/s]", "°/s"],
  ["speed (turns per min)", "rpm"],
  ["vitesse tr/min", "rpm"],
])("a rotation rate under %s is read in %s", (header, unit) => {
  const factor = { krpm: 1000, "100 rpm": 100, "°/s": 1 / 6, rpm: 1 }[unit]!;
  const guesses = guessesOf(`time_s|throttle_us|thrust_N|${header}`, ({ time, pulse, thrust, rpm }) => [
    time.toFixed(1),
    pulse,
    thrust.toFixed(3),
    (rpm / factor).toFixed(3),
  ]);
  expect(guesses[3]).toMatchObject({ role: "rotationRate", unit });
});

test("a torque without a unit offers kilogram-force centimetre and ounce-force inch as well", () => {
  const torque = guessesOf("time_s|throttle_us|thrust_N|rpm|torque", ({ time, pulse, thrust, rpm }) => [
    time.toFixed(1),
    pulse,
    thrust.toFixed(3),
    rpm,
    (thrust * 0.1).toFixed(4),
  ])[4]!;
  expect(torque).toMatchObject({ role: "torque", sure: false });
  expect(torque.alternatives.map(({ unit }) => unit)).toEqual(expect.arrayContaining(["kgf·cm", "ozf·in"]));
});

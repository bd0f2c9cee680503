import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { temporaryFolder } from "../api/temporaryFolder.ts";
import { relative } from "../relative.ts";
import { TRAIN } from "../unit/driveTrains.ts";
import { runCli } from "./runCli.ts";

/** The base case of the tests of the whole chain; fresh water of 18 °C has its 998.6 kg/m³ to 2e-6 (IAPWS). */
const BASE = [
  ...["--kv", "500rpm/V", "--resistance", "0.1ohm", "--no-load-current", "0.6A", "--controller-resistance", "10mohm"],
  ...["--supply", "16V", "--supply-resistance", "0.15ohm", "--diameter", "70mm", "--water", "fresh 18C"],
  ...["--thrust-coefficient", "0.3", "--torque-coefficient", "0.035"],
];
const json = async (...words: string[]) => {
  const { code, stdout, stderr } = await runCli("drive", ...words, "--json");
  expect(stderr).toBe("");
  expect(code).toBe(0);
  return JSON.parse(stdout);
};

function trainFile(train: unknown): string {
  const path = join(temporaryFolder(), "train.json");
  writeFileSync(path, typeof train === "string" ? train : JSON.stringify(train));
  return path;
}

describe("more parts by option", () => {
  test("a gear is a motor of a slower speed constant", async () => {
    // ω_m = g ω, Q_m = Q/g: K_v/g in place of K_v, nothing else changes where the gear loses nothing.
    const geared = await json(...BASE, "--gear-ratio", "4", "--kv", "2000rpm/V");
    const direct = await json(...BASE);
    // scipy brentq and fsolve, see the reference test of the whole chain.
    expect(direct.thrust).toSatisfy(relative(51.3306902857, 1e-5));
    for (const name of ["thrust", "rotationRate", "motorCurrent", "supplyVoltage"]) {
      expect(geared[name]).toSatisfy(relative(direct[name], 1e-9));
    }
  });

  test("a tether lies in series, and the state of the pack is worked out", async () => {
    const tether = [
      "--tether-length",
      "20m",
      "--tether-gauge",
      "18",
      "--tether-pairs",
      "2",
      "--cells",
      "4",
      "--charge",
      "50%",
    ];
    const { supply, supplyVoltage, supplyCurrent } = await json(...BASE, ...tether);
    // ASTM B258 with 1/58 Ω mm²/m: 2 x 20 m of AWG 18 are 0.837929439916 Ω, two pairs half of it.
    const [pack, copper] = supply.parts;
    expect(pack).toMatchObject({ name: "pack", resistance: 0.15 });
    expect(copper.resistance).toSatisfy(relative(0.837929439916 / 2, 1e-9));
    expect(supplyVoltage).toBeCloseTo(16 - supply.resistance * supplyCurrent, 9);
  });

  test("charge and cold act on a pack with cells", async () => {
    const state = ["--stated-charge", "50%", "--charge", "100%", "--supply-temperature=-5C"];
    const full = await json(...BASE, "--cells", "4", ...state);
    // Chen et al. 2020: 4.192911 V full, 3.707763 V at half charge; 25 K below 20 °C double the resistance.
    expect(full.supply.openCircuitVoltage).toBeCloseTo(16 + 4 * (4.192911 - 3.707763), 9);
    expect(full.supply.resistance).toBeCloseTo(0.3, 12);
  });

  test.each([
    { what: "a warm winding", more: ["--thermal-resistance", "1.5K/W"] },
    { what: "water in the motor", more: ["--wet-torque", "2e-7", "--wet-exponent", "2"] },
    { what: "freewheeling", more: ["--freewheel-voltage", "0.7V"] },
    { what: "a lossy gear", more: ["--gear-efficiency", "90%"] },
  ])("$what costs thrust at 60 % throttle, but less than a fifth", async ({ more }) => {
    // 28.2507584908 N without (scipy brentq and fsolve, see the reference test of the whole chain).
    const { thrust } = await json(...BASE, "--throttle", "60%", ...more);
    expect(thrust).toBeLessThan(28.24);
    expect(thrust).toBeGreaterThan(0.8 * 28.25);
  });

  test("at a speed a series lends its shape; without one the refusal names what is missing", async () => {
    const atRest = await json(...BASE);
    const moving = await json(...BASE, "--speed", "1m/s", "--series", "B3-50", "--pitch-ratio", "0.8");
    expect(moving.thrust).toBeLessThan(atRest.thrust);
    const refused = await runCli("drive", ...BASE, "--speed", "1m/s");
    expect(refused.code).toBe(2);
  });

  test("astern takes its own coefficients, or a stated share with a note; else it says what to measure", async () => {
    const own = ["--astern-thrust-coefficient", "0.2", "--astern-torque-coefficient", "0.035"];
    const ahead = await json(...BASE);
    // Equal torque: equal current and speed, thrust by the ratio of the coefficients.
    expect((await json(...BASE, "--astern", ...own)).thrust).toSatisfy(relative((ahead.thrust * 2) / 3, 1e-9));
    const shared = await json(...BASE, "--astern", "--astern-share", "70% ± 7%");
    expect(shared.thrust).toSatisfy(relative(0.7 * ahead.thrust, 1e-9));
    expect(shared.warnings[0].code).toBe("drive.astern-estimated");
    // The torque astern is as doubtful by the share as the thrust: more than a tenth of both comes through.
    expect(shared.uncertainties.thrust.standardUncertainty / shared.thrust).toBeGreaterThan(0.1);
    const { code, stderr } = await runCli("drive", ...BASE, "--astern");
    expect(code).toBe(2);
    expect(stderr).toMatch(/Run it backwards on the stand/);
  });

  test("the depth brings the limit of the water, and what it rests on", async () => {
    const { stdout } = await runCli("drive", ...BASE, "--depth", "9cm", "--area-ratio", "0.5", "--pitch-ratio", "0.8");
    expect(stdout).toMatch(/Governing limit\s+ventilation/);
    expect(stdout).toMatch(/Note: Cavitation at [\d,]+ rpm.*Burrill/);
  });
});

describe("a drive train from a file", () => {
  test("is the same as its options, and runs at a speed by its own curve", async () => {
    const train = { ...TRAIN, water: { kind: "fresh", temperature: 291.15 }, thrusters: 2, hotelPower: 10 };
    // Vehicle of the whole-chain values (scipy fsolve): two thrusters, 10 W hotel, V 1.9497862674 m/s: 28.4725811661 N and
    // 14.9290057179 A each.
    const found = await json("--train", trainFile(train), "--speed", "1.9497862674m/s");
    expect(found.thrust).toSatisfy(relative(28.4725811661, 1e-5));
    expect(found.motorCurrent).toSatisfy(relative(14.9290057179, 1e-5));
  });

  test.each([
    {
      what: "parts beside it",
      words: () => ["--train", trainFile(TRAIN), "--kv", "900rpm/V"],
      says: /--kv was given beside --train/,
    },
    { what: "no such file", words: () => ["--train", "/nowhere/train.json"], says: /no file of this name/ },
    { what: "no JSON", words: () => ["--train", trainFile("{ supply")], says: /is not complete JSON/ },
    { what: "a missing motor", words: () => ["--train", trainFile({ ...TRAIN, motor: undefined })], says: /motor/ },
    {
      what: "a doubt that is not followed",
      words: () => [...BASE, "--depth", "1m ± 0.1m"],
      says: /--depth: the uncertainty/,
    },
    {
      what: "a negative tether",
      words: () => [...BASE, "--tether-length", "-5m", "--tether-gauge", "18"],
      says: /--tether-length/,
    },
  ])("with $what exits with 2 and says so", async ({ words, says }) => {
    const { code, stdout, stderr } = await runCli("drive", ...words());
    expect(code).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toMatch(says);
  });
});

describe("control table", () => {
  test("is written as text for each voltage, and its ends are told", async () => {
    const path = join(temporaryFolder(), "commands.csv");
    const { code, stdout, stderr } = await runCli(
      ...["drive", "--train", trainFile(TRAIN), "--control-table", path, "--voltages", "16V,14V"],
    );
    expect(stderr).toBe("");
    expect(code).toBe(0);
    expect(stdout).toMatch(/at 2 voltages/);
    expect(stdout).toMatch(/14\.0 V ahead\s+[\d.]+ N at 1900 µs, ended by full throttle/);
    expect(stdout).toMatch(/16\.0 V astern\s+−[\d.]+ N at 1100 µs/);
    const [head, ...rows] = readFileSync(path, "utf8").trimEnd().split("\r\n");
    expect(head).toMatch(/^Open-circuit voltage \(V\),Command \(us\),Throttle \(%\),/);
    expect(new Set(rows.map((row) => row.split(",")[0]))).toEqual(new Set(["14", "16"]));
    expect(rows.every((row) => row.split(",").length === 11)).toBe(true);
  });

  test("from options takes usual pulses, says so, and ends at stop where nothing is known astern", async () => {
    const path = join(temporaryFolder(), "commands.csv");
    const { stdout } = await runCli("drive", ...BASE, "--control-table", path);
    expect(stdout).toMatch(/at one voltage/);
    expect(stdout).toMatch(/Note: .*1100, 1500 and 1900 µs/);
    expect(stdout).toMatch(/Note: .*no commands astern/);
    expect(readFileSync(path, "utf8")).not.toMatch(/astern/);
  });

  test.each([
    { words: ["--voltages", "14V"], says: /--voltages means nothing without --control-table/ },
    { words: ["--control-table", "x.csv", "--throttle", "50%"], says: /--throttle means nothing beside/ },
    { words: ["--control-table", "/nowhere/x.csv"], says: /\/nowhere\/x\.csv can not be written/ },
  ])("$words.0 $words.1 is refused where it can not be done", async ({ words, says }) => {
    const { code, stderr } = await runCli("drive", ...BASE, ...words);
    expect(code).toBe(2);
    expect(stderr).toMatch(says);
  });

  test("a voltage without a unit is refused", async () => {
    const words = ["--control-table", join(temporaryFolder(), "t.csv"), "--voltages", "16,14V"];
    const { code, stderr } = await runCli("drive", ...BASE, ...words);
    expect(code).toBe(2);
    expect(stderr).toMatch(/--voltages: "16" has no unit/);
  });
});

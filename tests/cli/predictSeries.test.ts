import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

const B4_70 = ["--series", "B4-70", "--diameter", "100mm", "--water", "fresh 15C"];

test("predict with a series, its pitch and its speed gives the coefficients of the polynomials", async () => {
  const words = [...B4_70, "--pitch-ratio", "1", "--rpm", "3000rpm", "--advance-speed", "4m/s", "--json"];
  const { code, stdout, stderr } = await runCli("predict", ...words);
  expect(stderr).toBe("");
  expect(code).toBe(0);
  const point = JSON.parse(stdout);
  // J = 4/(50 0.1) = 0.8: Oosterveld & van Oossanen 1975, table 5, evaluated independently: K_T 0.1297, 10 K_Q 0.2397.
  expect(point.advanceRatio).toBeCloseTo(0.8, 12);
  expect(point.thrustCoefficient).toBeCloseTo(0.1297, 4);
  expect(point.torqueCoefficient).toBeCloseTo(0.02397, 5);
  // T = K_T ρ n² D⁴ with 999.1 kg/m³ (fresh water of 15 °C): 0.12973 999.1 2500 1e-4.
  expect(point.thrust).toBeCloseTo(32.404, 2);
});

test("predict with a series and a thrust finds the best pitch, and tells what to make of it", async () => {
  const { code, stdout } = await runCli("predict", ...B4_70, "--thrust", "20N", "--advance-speed", "1.5m/s");
  expect(code).toBe(0);
  expect(stdout).toMatch(/^Best pitch ratio +0\.\d+\n/);
  expect(stdout).toContain("20.00 N");
  expect(stdout).toContain("yardstick");
});

test("with a depth it tells cavitation and air by the definitions, and the depth free of both", async () => {
  const screw = ["--series", "B3-60", "--diameter", "100mm", "--water", "fresh 15C", "--pitch-ratio", "1"];
  const asked = [...screw, "--rpm", "4500rpm", "--depth", "0.5m"];
  const { code, stdout } = await runCli("predict", ...asked);
  expect(code).toBe(0);
  // Worked by hand from the definitions of Burrill & Emerson (1963) and Keller (1966): T 241.6 N at K_T 0.4300, V_R 0.7 π n D
  // = 16.493 m/s, p_0 - p_v 104521 Pa, A_P 39.49 cm²: σ 0.7691, τ_c 0.4503; line 0.28 (σ - 0.03)^0.57; A_E/A_0 at least 0.509.
  expect(stdout).toMatch(/^It cavitates/);
  expect(stdout).toMatch(/Cavitation number at 0\.7 R +0\.7691\n/);
  expect(stdout).toMatch(/Blade loading +0\.4503\n/);
  expect(stdout).toMatch(/Loading at about 5 % back cavitation +0\.2357\n/);
  expect(stdout).toMatch(/Least area ratio in even inflow \(Keller\) +0\.5086 met\n/);
});

test("a duty that no pitch of the series does is told, and the exit code is 1", async () => {
  const { code, stdout } = await runCli("predict", ...B4_70, "--rpm", "3000rpm", "--thrust", "900N");
  expect(code).toBe(1);
  expect(stdout).toContain("900 N is asked for");
});

test.each([
  {
    words: ["--series", "X9", "--diameter", "100mm", "--thrust", "20N"],
    said: '--series: "X9" is no series propeller',
  },
  { words: [...B4_70, "--pitch-ratio", "1.7", "--rpm", "3000rpm"], said: "Needed: 0.5 to 1.4" },
  { words: [...B4_70, "--thrust", "20N", "--depth", "-1m"], said: "--depth: -1 m is too small" },
  { words: ["--series", "B4-70", "--thrust", "20N"], said: "neither --diameter nor --rpm was given" },
  { words: ["--series", "B9-70", "--diameter", "100mm", "--thrust", "20N"], said: "--series:" },
])("predict $words is refused with a sentence that says why", async ({ words, said }) => {
  const { code, stderr } = await runCli("predict", ...words);
  expect(code).toBe(2);
  expect(stderr).toContain(said);
});

import { expect, test } from "vitest";
import { listed } from "../unit/shortlistBox.ts";
import { SOLVED } from "./shortlistSolved.data.ts";

// Every combination of a box of 48, solved outside the project: see shortlistSolved.py (scipy 1.17.1, brentq).

const result = listed();
const rowOf = (number: number) => result.rows.find(({ combination }) => combination.number === number);
const missOf = (number: number) => result.misses.find(({ combination }) => combination.number === number);
const close = (found: number, solved: number, tolerance: number) =>
  expect(Math.abs(found / solved - 1)).toBeLessThan(tolerance);

test("the same combinations meet the requirement as the independent solution finds", () => {
  const meeting = SOLVED.filter(({ failing }) => failing.length === 0).map(({ number }) => number);
  expect(result.rows.map(({ combination }) => combination.number).sort((a, b) => a - b)).toEqual(meeting);
  expect(result.counts).toMatchObject({ combinations: SOLVED.length, meeting: meeting.length });
});

test("every combination that fails misses the same demands", () => {
  const failing = SOLVED.filter((solved) => solved.failing.length > 0);
  expect(result.misses).toHaveLength(failing.length);
  for (const { number, failing: demands } of failing) {
    const found = missOf(number)!.failing.map(({ demand }) => demand);
    expect(found.sort(), `combination ${number}`).toEqual(demands);
  }
});

test("failures are counted as often as the independent solution finds them, and alone", () => {
  const demands = new Set(SOLVED.flatMap(({ failing }) => failing as string[]));
  expect(new Set(result.failures.map(({ demand }) => demand))).toEqual(demands);
  for (const { demand, count, alone } of result.failures) {
    expect(count, demand).toBe(SOLVED.filter(({ failing }) => (failing as string[]).includes(demand)).length);
    expect(alone, demand).toBe(
      SOLVED.filter(({ failing }) => failing.length === 1 && (failing as string[])[0] === demand).length,
    );
  }
});

test("the greatest thrust within all limits is that of the independent solution, for every combination", () => {
  for (const { number, greatest } of SOLVED) {
    const point = (rowOf(number) ?? missOf(number))!.points.find(({ duty }) => duty === "ahead");
    // Where the supply collapses at the demanded thrust there is no state to tell of.
    if (point === undefined) continue;
    close(point.greatestThrust!, greatest, 1e-9);
  }
});

test("current, temperature, thrust over power, mass, price and endurance are those of the independent solution", () => {
  expect(result.rows.length).toBeGreaterThan(10);
  for (const row of result.rows) {
    const solved = SOLVED[row.combination.number]!;
    const point = row.points[0]!;
    close(point.supplyCurrent, solved.current!, 1e-10);
    close(point.windingTemperature!, solved.temperature!, 1e-10);
    close(point.thrustPerPower, solved.perPower!, 1e-10);
    close(row.mass!, solved.mass, 1e-12);
    close(row.price!, solved.price, 1e-12);
    close(row.endurance!, solved.endurance, 1e-10);
  }
});

test("a pack without resistance lasts charge over current, in closed form", () => {
  const pack = { name: "Ideal", openCircuitVoltage: 20, resistance: 0, charge: 100_000 };
  const motor = { name: "Ideal", speedConstant: 40, resistance: 0, noLoadCurrent: 0, thermalResistance: 1 };
  const { rows } = listed(
    {
      notStated: "nothing",
      thrusters: 3,
      thrustAhead: 5,
      endurance: { meanThrust: 4, duration: 1, reserve: 0.25 },
      hotelPower: 6,
    },
    { packs: [pack], motors: [motor], controllers: [], withoutController: true, gears: [] },
  );
  // By hand: n = sqrt(T/(K_T rho D^4)), P = 2 pi n K_Q rho n^2 D^5, I = (3 P + P_h)/U, t = 0.75 Q/I.
  for (const { combination, endurance } of rows) {
    const [D, K_T, K_Q] = { Fine: [0.076, 0.21, 0.0195], Coarse: [0.09, 0.33, 0.047] }[combination.propeller]!;
    const n = Math.sqrt(4 / (K_T! * 998.5980363 * D! ** 4));
    const P = 2 * Math.PI * n ** 3 * K_Q! * 998.5980363 * D! ** 5;
    close(endurance!, (0.75 * 100_000 * 20) / (3 * P + 6), 1e-9);
  }
  expect(rows.map(({ combination }) => combination.propeller).sort()).toEqual(["Coarse", "Fine"]);
});

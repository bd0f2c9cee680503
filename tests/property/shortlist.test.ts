import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { driveRequestOf } from "../../shared/drive/driveRequestOf.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { PartsBox, ShortlistRequest, ShortlistRequirement } from "../../shared/model/shortlist.ts";
import type { Shortlist } from "../../shared/model/shortlistResult.ts";
import { combinationCount, placesOf } from "../../shared/shortlist/combinations.ts";
import { finishedShortlist } from "../../shared/shortlist/finish.ts";
import { ParetoFront } from "../../shared/shortlist/front.ts";
import { bestOf, rankStretch } from "../../shared/shortlist/rank.ts";
import { searchStretch } from "../../shared/shortlist/search.ts";
import { preparedRecords, scoringOf, stretches } from "../../shared/shortlist/shortlist.ts";
import { mergedTally } from "../../shared/shortlist/tally.ts";
import { BOX, listed, propeller, REQUIREMENT } from "../unit/shortlistBox.ts";

const WEIGHTS = { thrustPerPower: 3, mass: 1, price: 2, thrustMargin: 1, tipSpeed: 0.5, endurance: 1 };

function finish<T>(work: Generator<number, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

const names = ({ rows }: Shortlist) => rows.map(({ combination: { number: _, ...parts } }) => JSON.stringify(parts));

describe("combinations and their numbers", () => {
  test("every number stands for one combination and every combination for one number", () => {
    const size = fc.integer({ min: 1, max: 6 });
    const sizes = fc.record({ motors: size, controllers: size, supplies: size, gears: size, propellers: size });
    fc.assert(
      fc.property(sizes, (of) => {
        const count = combinationCount(of);
        expect(count).toBe(of.motors * of.controllers * of.supplies * of.gears * of.propellers);
        const seen = new Set<string>();
        for (let number = 0; number < count; number++) {
          const places = placesOf(number, of);
          expect(places.propeller).toBe(number % of.propellers);
          seen.add(JSON.stringify(places));
        }
        expect(seen.size).toBe(count);
      }),
      { numRuns: 30 },
    );
  });

  test("stretches hold every combination once", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), fc.integer({ min: 1, max: 50 }), (combinations, count) => {
        let next = 0;
        for (const { start, end } of stretches(combinations, count)) {
          expect(start).toBe(next);
          next = end;
        }
        expect(next).toBe(combinations);
      }),
    );
  });
});

describe("front of two quantities", () => {
  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 12 })), {
    maxLength: 60,
  });
  const senses = fc.constantFrom<1 | -1>(1, -1);

  test("holds what comparing all pairs finds, in any order", () => {
    fc.assert(
      fc.property(points, senses, senses, (all, ofX, ofY) => {
        const beats = ([x, y]: readonly number[], [u, v]: readonly number[]) =>
          ofX * x! >= ofX * u! && ofY * y! >= ofY * v! && (x !== u || y !== v);
        const expected = all
          .filter((one) => !all.some((other) => beats(other, one)))
          .map((one) => one.join())
          .sort();
        const frontOf = (order: readonly number[]) => {
          const front = new ParetoFront(ofX, ofY);
          for (const place of order) front.add(place, all[place]![0], all[place]![1]);
          return front;
        };
        const forwards = frontOf(all.map((_, place) => place));
        const backwards = frontOf(all.map((_, place) => all.length - 1 - place));
        expect(forwards.points.map(({ x, y }) => `${x},${y}`).sort()).toEqual([...new Set(expected)]);
        expect(backwards.points).toEqual(forwards.points);
        expect(forwards.of).toBe(all.length);
      }),
    );
  });

  test("of parts is the front of all points", () => {
    fc.assert(
      fc.property(points, fc.integer({ min: 0, max: 60 }), (all, cut) => {
        const [whole, merged] = [new ParetoFront(1, -1), new ParetoFront(1, -1)];
        const parts = [new ParetoFront(1, -1), new ParetoFront(1, -1)];
        all.forEach(([x, y], place) => {
          whole.add(place, x, y);
          parts[place < cut ? 0 : 1]!.add(place, x, y);
        });
        for (const part of parts) merged.merge(part.points, part.of);
        expect(merged.points).toEqual(whole.points);
        expect(merged.of).toBe(whole.of);
      }),
    );
  });
});

test("the fronts of a shortlist are those of all combinations that meet", () => {
  const { rows, fronts } = listed();
  const front = fronts.find(({ x, y }) => x === "thrust" && y === "price")!;
  const all = rows.map((row) => [row.points[0]!.greatestThrust!, row.price!, row.combination.number] as const);
  const best = all.filter(
    ([thrust, price]) => !all.some(([t, p]) => t >= thrust && p <= price && (t > thrust || p < price)),
  );
  expect(front.of).toBe(rows.length);
  expect(new Set(front.points.map(({ x, y }) => `${x} ${y}`))).toEqual(new Set(best.map(([t, p]) => `${t} ${p}`)));
});

describe("ranking", () => {
  test("stays the same when all weights are scaled", () => {
    const scaled = Object.fromEntries(Object.entries(WEIGHTS).map(([name, weight]) => [name, weight * 37.5]));
    const [a, b] = [listed({ weights: WEIGHTS }), listed({ weights: scaled })];
    expect(names(a)).toEqual(names(b));
    for (const [place, { score }] of a.rows.entries()) expect(score).toBeCloseTo(b.rows[place]!.score, 12);
  });

  test("a part that can not meet the requirement changes neither who meets it nor the order", () => {
    const losing = propeller("Hopeless", 0.02, 0.05, 0.05, { mass: 0.01, price: 0 });
    const [before, after] = [
      listed({ weights: WEIGHTS }),
      listed({ weights: WEIGHTS }, { propellers: [losing, ...BOX.propellers!] }),
    ];
    expect(names(after)).toEqual(names(before));
    expect(after.rows.map(({ score }) => score)).toEqual(before.rows.map(({ score }) => score));
    expect(after.parts.find(({ name }) => name === "Hopeless")).toMatchObject({ meeting: 0, combinations: 16 });
  });

  test("a part more never changes who of the others meets", () => {
    const winning = { ...BOX.motors![0]!, name: "Better", resistance: 0.01, mass: 0.01, price: 1 };
    const [before, after] = [listed(), listed({}, { motors: [...BOX.motors!, winning] })];
    const others = names(after).filter((name) => !name.includes("Better"));
    expect(others.sort()).toEqual(names(before).sort());
  });

  test("the score is the sum of its parts and falls along the list", () => {
    const { rows } = listed({ weights: WEIGHTS });
    for (const { score, scores } of rows) {
      expect(scores.reduce((sum, { contribution }) => sum + contribution, 0)).toBeCloseTo(score, 12);
      for (const { normalised, weight, contribution } of scores)
        expect(contribution).toBeCloseTo(weight * normalised, 12);
    }
    const scores = rows.map(({ score }) => score);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
    expect(rows.map(({ rank }) => rank)).toEqual(rows.map((_, place) => place + 1));
  });
});

test("the outcome is the same to the last digit however the combinations are cut", () => {
  const request = ShortlistRequest.parse({ requirement: { ...REQUIREMENT, weights: WEIGHTS }, box: BOX });
  const records = preparedRecords(request);
  const whole = (count: number) => {
    const tallies = stretches(48, count).map(({ start, end }) =>
      finish(searchStretch(request.requirement, records, { start, end, misses: request.misses })),
    );
    const tally = mergedTally(tallies, request.misses);
    const scoring = scoringOf(request.requirement, tally);
    const ranked = tallies.map((one) => finish(rankStretch(request.requirement, records, one, scoring, request.rows)));
    return finishedShortlist(request, records, tally, bestOf(ranked, request.rows));
  };
  for (const count of [2, 3, 7, 48]) expect(whole(count)).toEqual(whole(1));
});

test("every row is the operating point that the drive gives at its throttle", () => {
  const result = listed({
    thrustAstern: 8,
    asternEstimate: { thrustShare: 0.8, torqueShare: 0.9, relativeUncertainty: 0 },
  });
  expect(result.rows.length).toBeGreaterThan(3);
  for (const { train, points } of result.rows) {
    for (const point of points) {
      const direction = point.duty === "astern" ? "astern" : "ahead";
      const asternEstimate = result.requirement.asternEstimate!;
      const running = { throttle: point.throttle, direction, advanceSpeed: 0, asternEstimate } as const;
      const drive = operatingPoint(driveRequestOf(train, running).request);
      expect(drive.thrust / point.thrust).toBeCloseTo(1, 9);
      expect(drive.supplyCurrent / point.supplyCurrent).toBeCloseTo(1, 9);
      expect(drive.windingTemperature / point.windingTemperature!).toBeCloseTo(1, 9);
      expect(drive.electricalPower / point.electricalPower).toBeCloseTo(1, 9);
    }
  }
});

describe("with the uncertainty counted", () => {
  const doubtful: typeof BOX = {
    ...BOX,
    motors: BOX.motors!.map((motor) => ({
      ...motor,
      uncertainties: { speedConstant: 0.02 * motor.speedConstant, resistance: 0.05 * motor.resistance },
    })),
    propellers: BOX.propellers!.map(({ ahead, ...rest }) => ({
      ...rest,
      ahead: {
        thrustCoefficient: {
          value: ahead.thrustCoefficient.value,
          standardUncertainty: 0.03 * ahead.thrustCoefficient.value,
        },
        torqueCoefficient: {
          value: ahead.torqueCoefficient.value,
          standardUncertainty: 0.03 * ahead.torqueCoefficient.value,
        },
        correlation: 0.5,
      },
    })),
  };

  test("those that meet with confidence are among those that meet by the best estimate", () => {
    const [plain, sure, surer] = [
      listed({}, doubtful),
      listed({ confidence: 0.95 }, doubtful),
      listed({ confidence: 0.999 }, doubtful),
    ];
    const [all, some, few] = [plain, sure, surer].map((one) => new Set(names(one)));
    expect([...some!].every((name) => all!.has(name))).toBe(true);
    expect([...few!].every((name) => some!.has(name))).toBe(true);
    expect(sure.counts.meeting).toBe(plain.counts.meetingAt95);
    expect(sure.counts.meeting).toBeLessThan(plain.counts.meeting);
    expect(sure.counts.meetingByBestEstimate).toBe(plain.counts.meeting);
    for (const { probability } of sure.rows) expect(probability).toBeGreaterThanOrEqual(0.95 - 1e-9);
    const uncertain = sure.failures.reduce((sum, one) => sum + one.uncertain, 0);
    expect(uncertain).toBeGreaterThan(0);
  });

  test("first-order probabilities agree with drawing all inputs", () => {
    const { rows } = listed({}, doubtful, { monteCarlo: { rows: 6, draws: 20_000, seed: 7 } });
    let compared = 0;
    for (const { drawn, demands } of rows.slice(0, 6)) {
      for (const { duty, demand, probability } of drawn!.demands) {
        const firstOrder = demands.find((one) => one.duty === duty && one.demand === demand)!.probability!;
        // Standard error of 20 000 draws is 0.0035 at most; the rest is what first order misses at 3 % doubts.
        expect(Math.abs(firstOrder - probability), `${duty} ${demand}`).toBeLessThan(0.02);
        compared++;
      }
      expect(drawn!.all).toBeLessThanOrEqual(Math.min(...drawn!.demands.map(({ probability }) => probability)));
    }
    expect(compared).toBeGreaterThan(30);
  });
});

test("a looser requirement never loses a combination", () => {
  const bound = fc.record({
    thrustAhead: fc.double({ min: 5, max: 40, noNaN: true }),
    supplyCurrent: fc.double({ min: 2, max: 60, noNaN: true }),
    tipSpeed: fc.double({ min: 8, max: 25, noNaN: true }),
  });
  fc.assert(
    fc.property(
      bound,
      fc.double({ min: 1, max: 1.5, noNaN: true }),
      ({ thrustAhead, supplyCurrent, tipSpeed }, ease) => {
        const strict = new Set(names(listed({ thrustAhead, supplyCurrent, tipSpeed })));
        const loose = new Set(
          names(
            listed({ thrustAhead: thrustAhead / ease, supplyCurrent: supplyCurrent * ease, tipSpeed: tipSpeed * ease }),
          ),
        );
        expect([...strict].filter((name) => !loose.has(name))).toEqual([]);
      },
    ),
    { numRuns: 25 },
  );
});

test("documents of a shortlist come back from JSON as they went", () => {
  expect(ShortlistRequirement.parse(JSON.parse(JSON.stringify(ShortlistRequirement.parse(REQUIREMENT))))).toEqual(
    ShortlistRequirement.parse(REQUIREMENT),
  );
  expect(PartsBox.parse(JSON.parse(JSON.stringify(PartsBox.parse(BOX))))).toEqual(PartsBox.parse(BOX));
});

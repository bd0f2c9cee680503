import { describe, expect, test } from "vitest";
import { EnduranceAnswer } from "../../shared/model/vehicle/enduranceAnswer.ts";
import { MissionLeg } from "../../shared/model/vehicle/mission.ts";
import { CELLS, hold, rest, sixThrusters, swim, twoThrusters, vehicleEndurance } from "./enduranceExample.ts";

test("an answer is a valid document, whatever is stated", () => {
  for (const vehicle of [
    twoThrusters({}),
    twoThrusters({ charge: 36_000 }),
    twoThrusters({ charge: 36_000, cells: CELLS }, [swim(1, 60), swim(9, 60), rest(10)]),
    sixThrusters({ charge: 36_000, cells: CELLS }, [hold(60)]),
  ]) {
    expect(EnduranceAnswer.safeParse(vehicleEndurance(vehicle)).error).toBeUndefined();
  }
});

test("without a stated charge powers are told and no times", () => {
  const answer = vehicleEndurance(twoThrusters({}, [swim(1, 60)]));
  expect(answer).toMatchObject({ charge: null, mission: null, speeds: null, packs: null });
  expect(answer.sentence).toBe("The charge of the pack is not stated, so that no time can be told.");
  expect(answer.holding!.cells[0]![0]).toMatchObject({ state: "held", time: null });
  expect(answer.holding!.cells[0]![0]!.power).toBeCloseTo(10, 9);
});

test("a mission that is longer than the charge says where it ends, why, and what is missing", () => {
  const { mission } = vehicleEndurance(twoThrusters({ charge: 3600 }, [swim(1, 300), swim(1.4, 900), rest(60)]));
  expect(mission!.fits).toBe(false);
  expect(mission!.legs.map(({ state }) => state)).toEqual(["done", "cut", "notReached"]);
  expect(mission!.endsAt).toMatchObject({ leg: 1, name: "swim 1.4", by: "reserve" });
  expect(mission!.chargeLeft).toBeCloseTo(0.2, 12);
  expect(mission!.missingCharge).toBeGreaterThan(0);
  expect(mission!.sentence).toMatch(
    /^The mission is longer than the charge\. It ends in leg 2 of 3, swim 1\.4, [\d.]+ min into it and [\d.]+ min after the start, because only the reserve is left in the pack\. [\d.]+\sA·h are needed with the reserve of 20\.0 %, [\d.]+ A·h more than the pack has\.$/,
  );
});

test("a leg beyond the thrusters is refused with what it needs and what there is", () => {
  const { mission } = vehicleEndurance(twoThrusters({ charge: 36_000 }, [rest(60), swim(2.5, 60)]));
  expect(mission!.legs[1]!.state).toBe("impossible");
  const { by, needed, available, unit, limitedBy } = mission!.legs[1]!.shortfall!;
  expect([by, unit, limitedBy!.part]).toEqual(["thrust", "N", "voltage"]);
  // ½ ρ C_D A V².
  expect(needed).toBeCloseTo(0.5 * 998.5980362819828 * 0.03 * 2.5 ** 2, 6);
  expect(available).toBeLessThan(57);
  expect(mission!).toMatchObject({ fits: false, neededCharge: null, times: null, lasts: null });
  expect(mission!.sentence).toMatch(
    /^The mission can not be done\. It ends before leg 2 of 2, swim 2\.5, after 60\.0 s/,
  );
});

const BOUNDS = [
  { name: "pack current", pack: { currentLimit: 5 }, by: "supplyCurrent", part: "pack" },
  { name: "fuse", pack: { fuseCurrent: 5 }, by: "fuseCurrent", part: "fuse" },
  { name: "least voltage", pack: { leastVoltage: 15.5 }, by: "leastVoltage", part: "pack" },
] as const;

test.each(BOUNDS)("a leg beyond the $name names it", ({ pack, by, part }) => {
  const { mission } = vehicleEndurance(twoThrusters({ charge: 36_000, ...pack }, [swim(1.5, 60)]));
  expect(mission!.endsAt!.by).toBe(by);
  expect(mission!.legs[0]!.shortfall!.limitedBy!.part).toBe(part);
});

test("a hotel load beyond the supply is told in watts", () => {
  const { mission } = vehicleEndurance(twoThrusters({ charge: 36_000 }, [{ ...rest(60), hotelPower: 500 }]));
  // 16²/(4 · 0.15).
  expect(mission!.legs[0]!.shortfall).toMatchObject({ by: "collapse", needed: 500, unit: "W" });
  expect(mission!.legs[0]!.shortfall!.available).toBeCloseTo(426.6666666667, 9);
});

test("as the voltage falls the thrusters may give out before the charge does", () => {
  const { mission } = vehicleEndurance(twoThrusters({ charge: 36_000, cells: CELLS }, [swim(1.9, 1e5)]));
  expect(mission!.endsAt!.by).toBe("thrust");
  expect(mission!.chargeLeft).toBeGreaterThan(0.3);
});

test("a leg along an axis without a thruster can not be done", () => {
  const leg = { name: "up", kind: { does: "climb", speed: 0.1, distance: 1 } };
  const { mission } = vehicleEndurance(twoThrusters({ charge: 36_000 }, [leg]));
  expect(mission!.fits).toBe(false);
  expect(mission!.legs[0]!.sentence).toMatch(/^It can not be done\./);
});

test("a swim that the current carries back has no end", () => {
  const leg = { name: "out", current: 1, kind: { does: "swim", speed: 0.8, extent: { by: "distance", distance: 10 } } };
  const { mission } = vehicleEndurance(twoThrusters({ charge: 36_000 }, [leg]));
  expect(mission!.duration).toBeNull();
  expect(mission!.legs[0]!).toMatchObject({ state: "impossible", duration: null });
  expect(mission!.legs[0]!.sentence).toMatch(/way backwards over the ground/);
});

test("a distance against a current takes as long as the ground speed says", () => {
  const leg = {
    name: "out",
    current: 0.3,
    repeats: 3,
    kind: { does: "swim", speed: 0.8, extent: { by: "distance", distance: 10 } },
  };
  const [one] = vehicleEndurance(twoThrusters({ charge: 36_000 }, [leg])).mission!.legs;
  expect(one!.time).toBeCloseTo((3 * 10) / 0.5, 9);
  expect(one!.distance).toBeCloseTo(30, 9);
});

test("of the packs at hand the smallest that fits comes first, then the nearest that does not", () => {
  const vehicle = twoThrusters({ charge: 36_000, cells: CELLS }, [swim(1, 3000)]);
  const { pack } = vehicle.supply;
  const more = [60_000, 12_000, 15_000, 24_000].map((charge) => ({ ...pack, name: `${charge} C`, charge }));
  const weak = { ...pack, name: "weak", charge: 90_000, openCircuitVoltage: 6, cells: { ...pack.cells!, series: 2 } };
  const { charge: _charge, ...unknown } = { ...pack, name: "unknown" };
  const { packs } = vehicleEndurance(vehicle, [...more, weak, unknown]);
  expect(packs!.packs.map(({ name }) => name).slice(0, 4)).toEqual(["24000 C", "60000 C", "15000 C", "12000 C"]);
  expect(packs).toMatchObject({ smallestThatFits: "24000 C", nearestThatDoesNot: "15000 C" });
  const nearest = packs!.packs[2]!;
  expect(nearest.missingCharge! + 15_000).toBeCloseTo(packs!.neededCharge!.value, 3);
  expect(packs!.sentence).toMatch(
    /Smallest of the packs at hand that fits: 24000 C\. Nearest that does not: 15000 C, short of [\d.]+ A·h\.$/,
  );
  expect(packs!.packs.find(({ name }) => name === "unknown")!.sentence).toBe("unknown: its charge is not stated.");
});

test("what fits is told with what is left and how often it would", () => {
  const { mission } = vehicleEndurance(twoThrusters({ charge: 36_000 }, [swim(1, 600)]));
  expect(mission!.sentence).toBe(
    "The mission fits: after 10.0 min 93.8\u202f% of the charge is left, and 20.0 % must be. At this mix of legs the charge lasts 128\u202fmin, 12.8\u202ftimes the mission.",
  );
  expect(mission!.probabilityFits).toBe(1);
  expect(mission!.left!.value).toBeCloseTo(mission!.chargeLeft, 12);
});

describe("where the doubt of a time is no interval", () => {
  const LARGER = "its doubt is larger than itself";
  const HARDLY = "its depth is hardly held";
  test.each([
    { what: "a charge that is hardly known", doubt: 40_000, why: null, says: LARGER },
    { what: "a depth that is hardly held", doubt: 1800, why: HARDLY, says: HARDLY },
  ])("$what gives mission and way without one, and says why once each", ({ doubt, why, says }) => {
    const vehicle = twoThrusters({ charge: 36_000, uncertainties: { charge: doubt } }, [swim(1, 600)]);
    const { mission, speeds } = vehicleEndurance(vehicle, [], why);
    const bare = { standardUncertainty: null, interval95: null, why: says };
    expect(mission).toMatchObject({ times: bare, lasts: bare });
    expect(speeds!.bestRange).toMatchObject({ time: bare, range: bare });
    for (const sentence of [mission!.sentence, speeds!.sentence])
      expect(sentence.split(`no interval can be stated: ${says}`)).toHaveLength(
        says === HARDLY && sentence === mission!.sentence ? 3 : 2,
      );
    expect(mission!.probabilityFits === null).toBe(why !== null);
  });

  test("a known charge gives an interval", () => {
    const vehicle = twoThrusters({ charge: 36_000, uncertainties: { charge: 1800 } }, [swim(1, 600)]);
    // 5 % of the charge is 5 % of the time, and none of the charge that is needed.
    const { lasts, neededCharge } = vehicleEndurance(vehicle).mission!;
    expect(lasts!.standardUncertainty! / lasts!.value).toBeCloseTo(0.05, 4);
    expect(neededCharge!.standardUncertainty).toBeLessThan(1);
  });
});

test("a pack that fits by less than the doubt of the charges is not called sure", () => {
  const vehicle = twoThrusters({ charge: 36_000, cells: CELLS }, [swim(1, 3000)]);
  const { pack } = vehicle.supply;
  const known = vehicleEndurance(vehicle).mission!.neededCharge!.value;
  const near = { ...pack, name: "near", charge: 1.03 * known, uncertainties: { charge: 0.05 * known } };
  const far = { ...pack, name: "far", charge: 2 * known, uncertainties: { charge: 0.05 * known } };
  const { packs, sentence } = vehicleEndurance(vehicle, [near, far]).packs!;
  expect(packs.map(({ name, fits, isSure }) => ({ name, fits, isSure }))).toEqual([
    { name: "near", fits: true, isSure: false },
    { name: "far", fits: true, isSure: true },
  ]);
  expect(packs[0]!.sentence).toMatch(/to spare\. Not surely: that is within the doubt of the charges\.$/);
  expect(sentence).toMatch(/Smallest of the packs at hand that fits, by the best estimate: near\./);
});

test("a curve of the cell that ends early is used as far as it goes, and said", () => {
  const curve = [
    { charge: 0.3, voltage: 3.5 },
    { charge: 0.6, voltage: 3.7 },
    { charge: 0.9, voltage: 4 },
  ];
  const cells = { series: 4, statedCharge: 0.9, curve };
  const answer = vehicleEndurance(twoThrusters({ charge: 36_000, cells }, [swim(1, 1e6)]));
  expect(answer.charge).toMatchObject({ start: 0.9, reserve: 0.3 });
  expect(answer.mission!.endsAt!.by).toBe("curve");
  expect(answer.warnings.map(({ code }) => code)).toEqual(["vehicle.endurance-curve-ends"]);
});

test("a pack without cells is said to keep its voltage", () => {
  const { warnings } = vehicleEndurance(twoThrusters({ charge: 36_000 }, [swim(1, 60)]));
  expect(warnings.map(({ code }) => code)).toEqual(["vehicle.endurance-constant-voltage"]);
});

test("a net weight that no thruster holds is told", () => {
  const vehicle = {
    ...twoThrusters({ charge: 36_000, cells: CELLS }, [swim(1, 60)]),
    netBuoyancy: { value: 2, standardUncertainty: 0 },
  };
  const { warnings } = vehicleEndurance(vehicle);
  expect(warnings.map(({ code }) => code)).toEqual(["vehicle.endurance-weight-not-held"]);
  expect(warnings[0]!.message).toContain("A net force of 2.00 N up has no thruster against it");
});

test("the picture of the charge runs from the start to the end without a gap", () => {
  const { track, time, chargeLeft } = vehicleEndurance(
    twoThrusters({ charge: 36_000, cells: CELLS }, [swim(1, 600), rest(60)]),
  ).mission!;
  expect(track[0]).toMatchObject({ time: 0, leg: 0, charge: 1 });
  expect(track.at(-1)!.time).toBeCloseTo(time, 6);
  expect(track.at(-1)!.charge).toBeCloseTo(chargeLeft, 12);
  expect(track.every((point, i) => i === 0 || point.time >= track[i - 1]!.time - 1e-9)).toBe(true);
});

test("a leg of less than no time is no leg", () => {
  expect(MissionLeg.safeParse(rest(-1)).success).toBe(false);
  expect(MissionLeg.safeParse({ ...hold(10), current: -0.1 }).success).toBe(false);
});

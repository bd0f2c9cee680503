import { expect, test } from "vitest";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { throttleSweep } from "../../shared/drive/throttleSweep.ts";
import { driveRequest } from "./driveRequest.ts";

test("a sweep has both ends and every point is the operating point of its throttle", () => {
  const request = driveRequest({ limits: { motorCurrent: 12 }, uncertainties: { diameter: 0.0002 } });
  const points = throttleSweep(request, 10);
  expect(points).toHaveLength(11);
  points.forEach((point, i) => {
    expect(point).toEqual(operatingPoint({ ...request, throttle: i / 10 }));
  });
});

test("a sweep that the supply cuts short says where", () => {
  const points = throttleSweep(driveRequest({ supplyResistance: 0.6, hotelPower: 90 }), 100);
  expect(points.length).toBeLessThan(101);
  expect(points.at(-1)!.warnings.at(-1)).toMatchObject({ code: "drive.sweep-cut-short", where: "throttle" });
  expect(points.slice(0, -1).flatMap((p) => p.warnings.filter((w) => w.code === "drive.sweep-cut-short"))).toEqual([]);
});

test("a hotel load that the supply can not hold at all is refused", () => {
  expect(() => throttleSweep(driveRequest({ supplyResistance: 0.6, hotelPower: 120 }), 10)).toThrow(
    /hotel load of 120 W/,
  );
});

test.each([0, -1, 2.5, Number.NaN])("%d steps are refused", (steps) => {
  expect(() => throttleSweep(driveRequest(), steps)).toThrow(/whole number/);
});

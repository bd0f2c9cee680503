import { describe, expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { VehicleBuild } from "../../shared/model/vehicle/vehicleBuild.ts";
import { layoutAnswer } from "../../shared/vehicle/layout/layoutAnswer.ts";
import { lossTable, reachRows } from "../../web/views/vehicle/layout/layoutModel.ts";
import { OUTLINE_HALF, outlineShape } from "../../web/views/vehicle/layout/outlineShape.ts";
import {
  drawnPicture,
  FIRST_VIEW,
  layoutInWords,
  turnedByDrag,
  turnedByKey,
  VIEWS,
} from "../../web/views/vehicle/layout/pictureModel.ts";
import { requestOf } from "../../web/views/vehicle/layout/typedLayoutRequest.ts";

const BUILD = VehicleBuild.parse(DEMO.vehicles[0]);
const REQUEST = requestOf(BUILD, () => ({ forward: 20, reverse: 12, doubt: 0.05 }));
const LAYOUT = layoutAnswer(REQUEST);

describe("the picture of a layout", () => {
  test("tells the same in words, for those who do not see it", () => {
    const [first, , , , fifth] = layoutInWords(BUILD.thrusters);
    expect(first).toBe(
      "1 Fore starboard: 160 mm ahead, 130 mm to starboard, 20 mm down; pushes ahead and to port, turning clockwise.",
    );
    expect(fifth).toContain("40 mm up; pushes down");
  });

  test.each(VIEWS)("$label fits into its box with a number at every thruster", ({ view }) => {
    const { lines, box, tags } = drawnPicture(BUILD.thrusters, view);
    const [left, top, width, height] = box;
    for (const [x, y] of lines.flatMap(({ points }) => points)) {
      expect(x).toBeGreaterThanOrEqual(left);
      expect(x).toBeLessThanOrEqual(left + width);
      expect(y).toBeGreaterThanOrEqual(top);
      expect(y).toBeLessThanOrEqual(top + height);
    }
    expect(tags.map(({ text }) => text).sort()).toEqual(["1", "2", "3", "4", "5", "6"]);
  });

  test("seen from above the bow is up and starboard to the right", () => {
    const { lines } = drawnPicture(BUILD.thrusters, VIEWS[0]!.view);
    const hub = lines.find(({ role, thruster }) => role === "thrust" && thruster === 0)!.points[0]!;
    expect([Math.sign(hub[0]), Math.sign(hub[1])]).toEqual([1, -1]);
  });

  test("arrow keys and drags turn it, never past straight up or down; other keys do not", () => {
    expect(turnedByKey(FIRST_VIEW, "a")).toBeNull();
    expect(turnedByKey(FIRST_VIEW, "ArrowRight")!.azimuth).toBeCloseTo(FIRST_VIEW.azimuth + Math.PI / 18, 12);
    const up = Array.from({ length: 30 }).reduce<typeof FIRST_VIEW>((now) => turnedByKey(now, "ArrowUp")!, FIRST_VIEW);
    expect(up.elevation).toBe(Math.PI / 2);
    expect(turnedByDrag(FIRST_VIEW, 0, -9).elevation).toBe(-Math.PI / 2);
  });
});

describe("what a layout reaches", () => {
  test("each commanded motion has a row each way with its greatest, its interval and what bounds it", () => {
    const rows = reachRows(LAYOUT);
    // Four at 45° with 20 N each: 4 · 20 · cos 45° = 56.57 N ahead, by hand.
    expect(rows[0]).toMatchObject({ axis: "Surge", way: "ahead", greatest: "57 ± 6\u202fN", current: "not known" });
    expect(rows.every(({ bounds }) => bounds !== "nothing pushes this way")).toBe(true);
    expect(rows.some(({ greatest }) => greatest.startsWith("\u2212"))).toBe(false);
  });

  test("without one of four corner thrusters half of surge is left, and heave stays", () => {
    const { heads, rows } = lossTable(LAYOUT);
    const [first] = rows;
    expect(first!.kept[heads.indexOf("Surge ahead")]).toBe("50 %");
    expect(first!.kept[heads.indexOf("Heave down")]).toBe("100 %");
  });

  test("an outline is drawn ahead up, to its scale, with round rings inside", () => {
    const shape = outlineShape(LAYOUT.outlines[0]!);
    expect(shape.free).toMatch(/^M.*Z$/);
    expect(shape.free).toContain(`0.00 ${(-OUTLINE_HALF).toFixed(2)}`);
    expect(shape.rings.map(({ text }) => text)).toEqual(["20 N", "40 N"]);
    expect(shape.sentence).toContain("56.6 N ahead");
    expect(shape.bus).toBeNull();
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ChartSeries } from "../../web/charts/chartSpec.ts";
import { isCrowded, numberedNames, spreadApart, tagsOf } from "../../web/charts/tags.ts";

const series = (id: string, kind: ChartSeries["kind"], legend?: string): ChartSeries => ({
  id,
  name: id,
  kind,
  style: 0,
  points: [{ x: 0, y: 0 }],
  ...(legend === undefined ? {} : { legend }),
});

describe("numbers at the curves", () => {
  it("counts the legend entries from 1, without the limits, and stands at the line of an entry that has one", () => {
    const tags = tagsOf({
      numbered: true,
      series: [
        series("limit", "limit"),
        series("points of sanded", "measured", "sanded"),
        series("fit of sanded", "fit", "sanded"),
        series("series", "prediction"),
      ],
    });
    expect(tags.map(({ number, series: { id } }) => [number, id])).toEqual([
      [1, "fit of sanded"],
      [2, "series"],
    ]);
  });

  it("takes the numbers of a group of pictures, so that a thing missing in one leaves the others theirs", () => {
    const all = [series("series", "prediction"), series("points of sanded", "measured", "sanded")];
    const numbered = numberedNames(all);
    expect(tagsOf({ numbered, series: all.slice(1) }).map(({ number }) => number)).toEqual([2]);
    expect(tagsOf({ series: all })).toEqual([]);
  });

  it("leaves numbers where their curves end while nothing stands beside them", () => {
    const anchors = [
      { x: 100, y: 50 },
      { x: 300, y: 52 },
    ];
    expect(spreadApart(anchors, { apart: 18, top: 8, bottom: 392 })).toEqual(anchors);
  });

  it("moves numbers at one place apart, in order, and keeps them in the picture", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 500, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (heights) => {
          const places = spreadApart(
            heights.map((y) => ({ x: 200, y })),
            { apart: 18, top: 8, bottom: 392 },
          ).map(({ y }) => y);
          const sorted = [...places].sort((a, b) => a - b);
          for (const [at, y] of sorted.entries()) {
            expect(y).toBeLessThanOrEqual(392);
            expect(y).toBeGreaterThanOrEqual(8 - 1e-9);
            if (at > 0) expect(y - sorted[at - 1]!).toBeGreaterThan(18 - 1e-6);
          }
          for (const [a, one] of heights.entries())
            for (const [b, other] of heights.entries())
              if (one < other) expect(places[a]!).toBeLessThanOrEqual(places[b]!);
        },
      ),
    );
  });

  it("of more curves than have room on their ends stand in a column beside the picture", () => {
    const curves = (count: number, ends: number) =>
      Array.from({ length: count }, (_, at) => ({
        ...series(`curve ${at}`, "prediction"),
        points: [
          { x: 0, y: 0 },
          { x: at < ends ? 10 : 5, y: at },
        ],
      }));
    const picture = (count: number, ends: number) => ({
      title: "",
      x: { label: "x", unit: "" },
      y: { label: "y", unit: "" },
      numbered: true,
      series: curves(count, ends),
    });
    expect([picture(6, 6), picture(7, 7), picture(12, 3)].map(isCrowded)).toEqual([false, true, false]);
    expect(isCrowded({ ...picture(12, 12), numbered: false })).toBe(false);
    const near = (y: number) => {
      const { series: two, ...rest } = picture(2, 2);
      const [first, second] = two;
      return {
        ...rest,
        series: [
          first!,
          {
            ...second!,
            points: [
              { x: 0, y: 10 },
              { x: 10, y },
            ],
          },
        ],
      };
    };
    // Both ends at 0 or a twentieth of the height above it: the number of one would lie on the other.
    expect([near(0.5), near(5)].map(isCrowded)).toEqual([true, false]);
  });
});

import { describe, expect, test } from "vitest";
import { readManifest } from "../../shared/compare/manifest/manifest.ts";

const SETTINGS = ["diameter", "water", "immersion", "pole-pairs", "kv"];
const read = (text: string) => readManifest(text, "runs.csv", SETTINGS);

const messageOf = (text: string): string => {
  try {
    read(text);
  } catch (thrown) {
    return (thrown as Error).message;
  }
  return "";
};

test("each row names a run with its facts in SI and what its reduction needs", () => {
  const rows = read(
    [
      "# invented",
      "file,variant,mounting,finish,pitch ratio,diameter (mm),blades,nozzle,layer height [mm],roughness (um),immersion (cm),water,pack,day,tags,pole pairs,kv (rpm/V)",
      'a.csv,as printed,1,as printed,1.0,76.0 ± 0.2,3,no,0.2,40,12,"fresh 18C",A,2026-05-12,tank cold,7,700',
      "",
      "sub/b.csv,sanded,2,sanded,1.0,3in,3,yes,,,,sea 12C 35,B,2026-05-13,,,",
    ].join("\r\n"),
  );
  expect(rows).toHaveLength(2);
  expect(rows[0]).toMatchObject({ line: 3, file: "a.csv" });
  expect(rows[0]!.facts).toEqual({
    ...{ variant: "as printed", mounting: "1", finish: "as printed", pitchRatio: 1, bladeCount: 3, nozzle: false },
    ...{ diameter: 0.076, layerHeight: 0.0002, roughness: expect.closeTo(40e-6, 12), immersion: 0.12, pack: "A" },
    ...{ day: "2026-05-12", tags: ["tank", "cold"], fluid: { kind: "fresh", temperature: 291.15 } },
  });
  expect(Object.fromEntries(rows[0]!.settings)).toEqual({
    ...{ diameter: "76.0 mm ± 0.2 mm", immersion: "12 cm", water: "fresh 18C" },
    ...{ "pole-pairs": "7", kv: "700 rpm/V" },
  });
  expect(rows[1]).toMatchObject({ line: 5, file: "sub/b.csv" });
  expect(rows[1]!.facts.diameter).toBeCloseTo(0.0762, 12);
  expect(rows[1]!.settings.get("nozzle")).toBe("");
  expect(rows[1]!.facts).not.toHaveProperty("layerHeight");
});

test("semicolons with decimal commas, tabs and a byte order mark are read alike", () => {
  const plain = read("file;pitch ratio;diameter (mm)\na.csv;0,9;76,2");
  expect(plain[0]!.facts).toMatchObject({ pitchRatio: 0.9, diameter: expect.closeTo(0.0762, 12) });
  const tabs = read("\uFEFFFile\tVariant\na.csv\tsanded");
  expect(tabs[0]).toMatchObject({ file: "a.csv", facts: { variant: "sanded" } });
});

describe("what can not be used is named by line and column", () => {
  test("all bad cells at once", () => {
    const message = messageOf(
      "file,diameter (mm),blades,day,nozzle\na.csv,7x6,3,2026-05-12,no\nb.csv,76,2.5,12.5.2026,perhaps\n,76,3,,\na.csv,76,3,,",
    );
    expect(message).toContain("runs.csv: line 2, column diameter (mm):");
    expect(message).toContain('line 3, column blades: "2.5" is not a number of blades');
    expect(message).toContain("line 3, column day:");
    expect(message).toContain("line 3, column nozzle:");
    expect(message).toContain("line 4, column file: no file is named");
    expect(message).toContain("line 5, column file: a.csv stands in line 2 already");
  });

  test("a number without a unit anywhere, one below nought, and too many cells", () => {
    expect(messageOf("file,diameter\na.csv,76")).toMatch(/line 2, column diameter: .*no unit/);
    expect(messageOf("file,pitch ratio\na.csv,-1")).toContain('"-1" is not above 0');
    expect(messageOf("file,finish\na.csv,wet, sanded")).toContain("3 cells under 2 headings");
  });

  test.each([
    { text: "", code: "compare.manifest-empty" },
    { text: "# only a remark\nfile,variant", code: "compare.manifest-empty" },
    { text: "file,colour\na.csv,red", code: "compare.manifest-column" },
    { text: "variant,finish\nx,y", code: "compare.manifest-column" },
    { text: "file,variant,Variant\na.csv,x,y", code: "compare.manifest-column" },
    { text: "file,\na.csv,x", code: "compare.manifest-column" },
  ])("$text is refused with $code", ({ text, code }) => {
    expect(() => read(text)).toThrow(expect.objectContaining({ problem: expect.objectContaining({ code }) }));
  });
});

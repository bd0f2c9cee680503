import { type Calibrated, coverageOf, drawnRun } from "./drawnRun.ts";
import { coverageOfFinish, SURFACES } from "./finishCoverage.ts";
import { coverageOfRatio, MOUNTED } from "./ratioCoverage.ts";
import { coverageOfKind, STAND_KINDS, TRIED_NAMES } from "./standKinds.ts";

/**
 * `npm run coverage-study [runs] [runs of each kind]`: how often the stated 95 % intervals hold the truth, in seeds 1 to
 * `runs` of stands of all sorts, and by kind of stand; before these, the ratio of two variants and the surface of a measured blade.
 */
const count = Number(process.argv[2] ?? 1000);
const ofEachKind = Number(process.argv[3] ?? 300);
/** What chance alone leaves open in a share near 95 %, two standard errors. */
const openIn = (runs: number) => 2 * Math.sqrt((0.95 * 0.05) / runs);
const percent = (part: number) => (100 * part).toFixed(1);
let missed = 0;

function study(calibrated: Calibrated, title: string): void {
  console.log(`${title}, ${count} runs, wanted 93 to 97 %, chance leaves ± ${percent(openIn(count))} %`);
  const runs = Array.from({ length: count }, (_, i) => drawnRun(i + 1, calibrated));
  for (const { name, covered, deviation, mean } of coverageOf(runs)) {
    const verdict = covered < 0.93 ? "NARROW" : covered > 0.97 ? "WIDE  " : "met   ";
    if (verdict !== "met   ") missed += 1;
    const errors = `normalised deviation ${deviation.toFixed(2)}, mean ${mean.toFixed(2)}`;
    console.log(`${verdict}  ${name.padEnd(14)} covered ${percent(covered)} %; ${errors}`);
  }
}

/** By kind; a star where the share lies outside 93 to 97 % by more than chance explains. */
function studyKinds(): void {
  const open = openIn(ofEachKind);
  console.log(`By kind of stand, ${ofEachKind} runs each, chance leaves ± ${percent(open)} %; covered in %`);
  console.log("".padEnd(38), ...TRIED_NAMES.map((name) => name.padStart(10)));
  const all = STAND_KINDS.map((kind) => {
    const covered = coverageOfKind(kind, ofEachKind, 100_000);
    const cells = covered.map((part) => `${percent(part)}${part < 0.93 - open || part > 0.97 + open ? "*" : " "}`);
    console.log(kind.name.padEnd(38), ...cells.map((cell) => cell.padStart(10)));
    missed += covered.filter((part) => part < 0.93 - open).length;
    return covered;
  });
  const total = TRIED_NAMES.map((_, k) => all.reduce((sum, covered) => sum + covered[k]!, 0) / all.length);
  console.log("all kinds".padEnd(38), ...total.map((part) => `${percent(part)} `.padStart(10)));
}

/** Of the ratio of two variants; a star where it lies outside 93 to 97 %. Told, not counted as missed: see variantRatio. */
function studyRatios(): void {
  const simulations = 20 * count;
  const choices = ["tested", "pooled", "separate"] as const;
  console.log(
    `Ratio of two variants, ${simulations} comparisons each, chance leaves ± ${percent(openIn(simulations))} %`,
  );
  console.log("mountings, spreads".padEnd(24), ...choices.map((choice) => choice.padStart(10)), "  covered in %");
  for (const [i, kind] of MOUNTED.entries()) {
    const covered = coverageOfRatio(kind, choices, { simulations, seed: 1000 + i });
    const cells = covered.map((part) => `${(100 * part).toFixed(2)}${part < 0.93 || part > 0.97 ? "*" : " "}`);
    const name = `${kind.mountings.join(" and ")}, 1 to ${kind.times}`;
    console.log(name.padEnd(24), ...cells.map((cell) => cell.padStart(10)));
  }
}

/** Of section drag and roughness read from a measured blade, near the bounds of what a surface can be. Told, not counted as missed. */
function studyFinishes(): void {
  console.log(`Surface of a measured blade, ${count} measurements each, chance leaves ± ${percent(openIn(count))} %`);
  for (const [i, surface] of SURFACES.entries()) {
    const { drag, roughness, plainBelowNought } = coverageOfFinish(surface, count, 2000 + i);
    const told = `drag ${percent(drag)} %, roughness ${percent(roughness)} % covered`;
    console.log(`${surface.name.padEnd(24)} ${told}; ± 1.96 u below nought in ${percent(plainBelowNought)} %`);
  }
}

studyRatios();
studyFinishes();
study("asStated", "Calibrations, diameter and temperature off by draws from what is stated");
study("exactly", "Everything calibrated exactly: what the readings alone show");
studyKinds();
process.exitCode = missed > 0 ? 1 : 0;

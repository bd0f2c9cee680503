import { type Calibrated, coverageOf, drawnRun } from "./drawnRun.ts";

/** `npm run coverage-study [runs]`: how often the stated 95 % intervals hold the truth, in seeds 1 to `runs`. */
const count = Number(process.argv[2] ?? 1000);
/** What chance alone leaves open in a share near 95 %, two standard errors. */
const open = 2 * Math.sqrt((0.95 * 0.05) / count);
let missed = 0;

function study(calibrated: Calibrated, title: string): void {
  console.log(`${title}, ${count} runs, wanted 93 to 97 %, chance leaves ± ${(100 * open).toFixed(1)} %`);
  const runs = Array.from({ length: count }, (_, i) => drawnRun(i + 1, calibrated));
  for (const { name, covered, deviation, mean } of coverageOf(runs)) {
    const met = covered >= 0.93 && covered <= 0.97;
    if (!met) missed += 1;
    const errors = `normalised deviation ${deviation.toFixed(2)}, mean ${mean.toFixed(2)}`;
    console.log(`${met ? "met   " : "MISSED"}  ${name.padEnd(14)} covered ${(100 * covered).toFixed(1)} %; ${errors}`);
  }
}

study("asStated", "Calibrations, diameter and temperature off by draws from what is stated");
study("exactly", "Everything calibrated exactly: what the readings alone show");
process.exitCode = missed > 0 ? 1 : 0;

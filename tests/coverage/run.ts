import { coverageOf, drawnRun } from "./drawnRun.ts";

/** `npm run coverage-study [runs]`: how often the stated 95 % intervals hold the truth, in seeds 1 to `runs`. */
const count = Number(process.argv[2] ?? 1000);
const runs = Array.from({ length: count }, (_, i) => drawnRun(i + 1));

/** What chance alone leaves open in a share near 95 %, two standard errors. */
const open = 2 * Math.sqrt((0.95 * 0.05) / count);
let missed = 0;
for (const { name, covered, deviation, mean } of coverageOf(runs)) {
  const met = covered >= 0.93 && covered <= 0.97;
  if (!met) missed += 1;
  console.log(
    `${met ? "met   " : "MISSED"}  ${name.padEnd(14)} covered ${(100 * covered).toFixed(1)} % (± ${(100 * open).toFixed(1)}), wanted 93 to 97 %;  normalised deviation ${deviation.toFixed(2)}, mean ${mean.toFixed(2)}`,
  );
}
process.exitCode = missed > 0 ? 1 : 0;

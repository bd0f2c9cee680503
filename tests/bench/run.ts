import { measureBladeElements } from "./bladeElements.ts";
import { measureDrive } from "./driveSpeed.ts";
import { measureGrowth } from "./growth.ts";
import { measureLogReading } from "./logReading.ts";
import { measureLongRuns } from "./longRuns.ts";
import { measureSeries } from "./seriesSpeed.ts";
import { measureShortlist } from "./shortlistSearch.ts";
import { measureSliders } from "./sliderRedraw.ts";

/** Speed, as ratios and times measured in one run on this machine. Not part of the tests: machines differ. */
const rows = [
  ...(await measureLogReading()),
  ...measureGrowth(),
  ...(await measureLongRuns()),
  ...measureSeries(),
  ...measureBladeElements(),
  ...(await measureDrive()),
  ...(await measureShortlist()),
  ...(await measureSliders()),
];

let missed = 0;
for (const { what, measured, wanted, met } of rows) {
  if (!met) missed += 1;
  console.log(`${met ? "met   " : "MISSED"}  ${what.padEnd(72)} ${measured.padStart(12)}   wanted: ${wanted}`);
}
process.exitCode = missed > 0 ? 1 : 0;

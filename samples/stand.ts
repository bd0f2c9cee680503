// A stand that is not there: writes the lines of a log to standard output as a logger on a serial port would.
// Usage: npm run --silent stand -- samples/logs/finish-sanded-1.csv [LINES_A_SECOND]
import { readFileSync } from "node:fs";
import { setTimeout } from "node:timers/promises";

const [path = "samples/logs/finish-sanded-1.csv", rate = "20"] = process.argv.slice(2);
const linesASecond = Number(rate);
if (!(linesASecond > 0)) {
  process.stderr.write(`"${rate}" is not a number of lines a second. Write for example 20.\n`);
  process.exit(2);
}

for (const line of readFileSync(path, "latin1").split(/(?<=\n)/)) {
  // As bytes: the encoding of the log is none of a serial port's business.
  process.stdout.write(Buffer.from(line, "latin1"));
  await setTimeout(1000 / linesASecond);
}

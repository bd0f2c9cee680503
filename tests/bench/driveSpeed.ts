import { spawnSync } from "node:child_process";
import { Worker } from "node:worker_threads";
import type { BenchRow } from "./benchRow.ts";
import { driveCases } from "./driveCases.ts";
import { CASES, pointsPerSecond, thrusts } from "./driveRound.ts";

const MILLISECONDS = 1500;
/** Full operating points a second that a shortlist of a million combinations needs. */
const LEAST = 200_000;

/**
 * Furthest throttle within eleven limits, with heat, flooded rotor, gear, freewheel, switching, sag and several thrusters
 * at work: how many a second, on one thread and on two, and against general-purpose libraries at the same work.
 */
export async function measureDrive(): Promise<BenchRow[]> {
  // Time of the processor, so that what else runs on this machine does not count.
  const rate = pointsPerSecond(MILLISECONDS, () => process.cpuUsage().user / 1000);
  const [alone] = await onWorkers(1);
  const together = (await onWorkers(2)).reduce((sum, one) => sum + one, 0);
  return [
    {
      what: "drive: full operating points a second on one core",
      measured: `${Math.round(rate)}`,
      wanted: `at least ${LEAST}`,
      met: rate >= LEAST,
    },
    {
      what: "drive: two workers together over one alone",
      measured: (together / alone!).toFixed(2),
      wanted: "at least 1.6, on two free cores",
      met: together >= 1.6 * alone!,
    },
    ...againstLibraries(rate),
  ];
}

function onWorkers(count: number): Promise<number[]> {
  const file = new URL("driveWorker.mjs", import.meta.url);
  const one = () =>
    new Promise<number>((resolve, reject) => {
      const worker = new Worker(file, { workerData: MILLISECONDS });
      worker.once("message", resolve);
      worker.once("error", reject);
    });
  return Promise.all(Array.from({ length: count }, one));
}

interface Outside {
  readonly numpy: number;
  readonly scipy: number;
  readonly thrusts: readonly number[];
  readonly single: readonly number[];
}

function againstLibraries(rate: number): BenchRow[] {
  const cases = driveCases(CASES);
  const script = new URL("driveOutside.py", import.meta.url).pathname;
  const { status, stdout } = spawnSync("python3", [script], {
    input: JSON.stringify(cases),
    encoding: "utf8",
    maxBuffer: 1e8,
  });
  if (status !== 0) {
    const measured = "left out";
    return [
      { what: "drive: against numpy and scipy", measured, wanted: "python3 with scipy on this machine", met: true },
    ];
  }
  const outside = JSON.parse(stdout) as Outside;
  const own = thrusts(cases);
  const apart = Math.max(
    ...[outside.thrusts, outside.single].flatMap((all) => all.map((T, i) => Math.abs(T / own[i]! - 1))),
  );
  return [
    {
      what: "drive: rate over that of numpy bisecting all cases at once",
      measured: `${(rate / outside.numpy).toFixed(1)} ×`,
      wanted: "at least 2 ×",
      met: rate >= 2 * outside.numpy,
    },
    {
      what: "drive: rate over that of scipy's brentq case by case",
      measured: `${Math.round(rate / outside.scipy)} ×`,
      wanted: "at least 50 ×",
      met: rate >= 50 * outside.scipy,
    },
    {
      what: "drive: greatest difference in thrust from numpy and scipy",
      measured: apart.toExponential(1),
      wanted: "under 1e-8",
      met: apart < 1e-8,
    },
  ];
}

import { parentPort, workerData } from "node:worker_threads";
import { register } from "tsx/esm/api";

register();
const { pointsPerSecond } = await import("./driveRound.ts");
parentPort.postMessage(pointsPerSecond(workerData));

import { pathToFileURL } from "node:url";
import type { FastifyInstance } from "fastify";
import { DEMO } from "../samples/demo.ts";
import { InputProblem } from "../shared/quantity/problem.ts";
import { buildApp } from "./app.ts";
import { type Config, readConfig } from "./config.ts";
import { loadDemo } from "./demo/loadDemo.ts";
import { PROGRAM } from "./program.ts";
import { PROJECT_FOLDER } from "./projectFolder.ts";
import { openStore } from "./store/openStore.ts";
import type { Store } from "./store/store.ts";

/** This computer alone: nothing on the network can reach it. */
const HOST = "127.0.0.1";

/**
 * Starts the workbench and prints where it is; it runs until it gets SIGINT or SIGTERM.
 * Throws InputProblem when settings, data folder or port can not be used; nothing was changed then.
 */
export async function startWorkbench(args: readonly string[]): Promise<void> {
  const config = readConfig(args, process.env);
  const store = await openStore(config.dataFolder);
  try {
    if (config.demo) await loadDemo(store, DEMO, pathToFileURL(`${PROJECT_FOLDER}/samples/logs/`));
    const app = await buildApp({ store });
    await listen(app, config);
    tellWhere(app, config);
    stopOnSignal(app, store);
  } catch (reason) {
    store.close();
    throw reason;
  }
}

async function listen(app: FastifyInstance, { port }: Config): Promise<void> {
  try {
    await app.listen({ host: HOST, port });
  } catch (reason) {
    if ((reason as NodeJS.ErrnoException).code === "EADDRINUSE") throw portTaken(port);
    if ((reason as NodeJS.ErrnoException).code === "EACCES") throw portForbidden(port);
    throw reason;
  }
}

function tellWhere(app: FastifyInstance, { dataFolder }: Config): void {
  const address = app.server.address();
  const port = typeof address === "object" && address !== null ? address.port : 0;
  process.stdout.write(`${PROGRAM}
Address      http://${HOST}:${port}/
Data folder  ${dataFolder}
Stop with Ctrl+C.
`);
}

function stopOnSignal(app: FastifyInstance, store: Store): void {
  const stop = async () => {
    await app.close();
    store.close();
    process.exit(0);
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

function portTaken(port: number): InputProblem {
  return new InputProblem({
    code: "server.port-taken",
    where: `port ${port}`,
    found: "Another program listens there",
    needed: "a free port",
    mend: `Stop the other program, or start with --port ${port === 65_535 ? port - 1 : port + 1}, or with --port 0 for any free one`,
  });
}

function portForbidden(port: number): InputProblem {
  return new InputProblem({
    code: "server.port-forbidden",
    where: `port ${port}`,
    found: "This user may not listen there",
    needed: "a port above 1023",
    mend: "Start with --port 0 for any free one",
  });
}

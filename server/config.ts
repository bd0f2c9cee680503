import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { InputProblem } from "../shared/quantity/problem.ts";
import { PROJECT_FOLDER } from "./projectFolder.ts";

export interface Config {
  /** Port on 127.0.0.1; 0 takes any free one. */
  readonly port: number;
  readonly dataFolder: string;
  /** Load the demonstration into a folder that never held a project. */
  readonly demo: boolean;
}

const DEFAULT_PORT = "8730";

/** Settings from the command line, then from the environment, then the usual ones. Throws InputProblem. */
export function readConfig(args: readonly string[], environment: Readonly<Record<string, string | undefined>>): Config {
  const flags = readFlags(args);
  const data = flags.data ?? environment["BOLLARD_DATA"] ?? join(PROJECT_FOLDER, ".bollard-data");
  const [where, port] =
    flags.port !== undefined ? ["--port", flags.port] : ["BOLLARD_PORT", environment["BOLLARD_PORT"] ?? DEFAULT_PORT];
  return {
    port: readPort(where as string, port as string),
    dataFolder: resolve(data),
    demo: flags["no-demo"] !== true,
  };
}

function readFlags(args: readonly string[]) {
  try {
    const options = { port: { type: "string" }, data: { type: "string" }, "no-demo": { type: "boolean" } } as const;
    return parseArgs({ args: [...args], options, strict: true }).values;
  } catch {
    throw new InputProblem({
      code: "server.unknown-flag",
      where: "command line",
      found: `"${args.join(" ")}" is not understood`,
      needed: "--port NUMBER, --data FOLDER, --no-demo",
      mend: "Write for example: npm start -- --port 4800",
    });
  }
}

function readPort(where: string, text: string): number {
  const port = Number(text);
  if (/^\d{1,5}$/.test(text) && port <= 65_535) return port;
  throw new InputProblem({
    code: "server.no-port",
    where,
    found: `"${text}" is not a port`,
    needed: "a whole number from 0 to 65535; 0 takes any free one",
    mend: "",
  });
}

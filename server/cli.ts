import { commandLine } from "./cli/commandLine.ts";

process.exitCode = await commandLine(process.argv.slice(2));

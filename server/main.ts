// Starts the workbench. Exit code 2 with one sentence on stderr when it can not be started as things are.
import { InputProblem } from "../shared/quantity/problem.ts";
import { startWorkbench } from "./start.ts";

startWorkbench(process.argv.slice(2)).catch((reason: unknown) => {
  const text =
    reason instanceof InputProblem
      ? reason.message
      : `A fault of the workbench: ${String((reason as Error).stack ?? reason)}`;
  process.stderr.write(`${text}\n`);
  process.exit(reason instanceof InputProblem ? 2 : 70);
});

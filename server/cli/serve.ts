import type { Usage, Words } from "./options.ts";

export const USAGE: Usage = {
  verb: "serve",
  arguments: "",
  about: "Starts the workbench on this computer and prints its address. Stop it with Ctrl+C.",
  options: {
    port: { value: "NUMBER", text: "port to listen on; 0 takes any free one" },
    data: { value: "FOLDER", text: "where projects and logs are kept" },
    "no-demo": { text: "do not load the Dabchick demo into an empty folder" },
  },
  examples: ["serve --port 4800"],
};

export async function run(_words: Words, args: readonly string[]): Promise<number> {
  const { startWorkbench } = await import("../start.ts");
  await startWorkbench(args);
  return 0;
}

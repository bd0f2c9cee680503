// Entry of a worker thread when the program runs from its TypeScript sources: first the loader that can read them.
import { register } from "tsx/esm/api";

register();
await import("./reduceWorker.ts");

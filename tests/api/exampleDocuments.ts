import type { Propeller } from "../../shared/model/parts/propeller.ts";
import type { Project } from "../../shared/model/project.ts";
import type { Run } from "../../shared/model/run.ts";

export const PROJECT: Project = {
  name: "Dabchick",
  note: "",
  water: { kind: "sea", temperature: 285.15, salinity: 33 },
  invented: true,
};

export const PROPELLER: Propeller = {
  name: "Net propeller, sanded",
  diameter: 0.076,
  diameterUncertainty: 0.0001,
  nozzle: false,
  finish: "sanded",
  note: "",
};

export const runOf = (sha256: string, size: number): Run => ({
  name: "First mounting",
  purpose: "propeller",
  variant: "sanded",
  mounting: "1",
  file: { name: "log.csv", sha256, size },
  recipe: {
    columns: [{ column: 0, role: "thrust", unit: "N" }],
    fluid: { kind: "fresh", temperature: 291.15 },
    corrections: {},
    tare: { mode: "none" },
    plateaus: { mode: "automatic" },
    leftOut: [],
  },
  confirmed: false,
  note: "",
});

export async function* bytesOf(text: string): AsyncIterable<Uint8Array> {
  yield new TextEncoder().encode(text);
}

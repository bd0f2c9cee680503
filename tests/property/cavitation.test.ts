import fc from "fast-check";
import { expect, test } from "vitest";
import { CavitationRequest } from "../../shared/model/cavitation.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";
import { between, expectClose, expectFinite } from "./propellerCases.ts";

const thruster = fc.record({
  thrust: between(0.01, 1e4),
  nozzleThrust: between(0, 1e4),
  advanceSpeed: between(0, 20),
  rotationRate: between(0.5, 300),
  diameter: between(0.02, 2),
  blades: fc.integer({ min: 2, max: 7 }),
  areaRatio: between(0.2, 1.1),
  pitchRatio: between(0.4, 1.6),
  shaftImmersion: between(0, 100),
});

const WATER = { kind: "sea", temperature: 285.15, salinity: 33 } as const;

test("deeper is never worse: the cavitation number grows, no line is newly crossed, and air is drawn no more", () => {
  const severity = { below: 0, unjudged: 0, near: 1, above: 2 };
  const wet = { unlikely: 0, possible: 1, likely: 2 };
  fc.assert(
    fc.property(thruster, between(0.01, 50), (at, deeper) => {
      const here = cavitation(CavitationRequest.parse({ ...at, fluid: WATER }));
      const there = cavitation(
        CavitationRequest.parse({ ...at, fluid: WATER, shaftImmersion: at.shaftImmersion + deeper }),
      );
      expectFinite(here);
      expect(there.cavitationNumber).toBeGreaterThan(here.cavitationNumber);
      expect(wet[there.ventilation.verdict]).toBeLessThanOrEqual(wet[here.ventilation.verdict]);
      for (const [i, { state }] of there.lines.entries()) {
        expect(severity[state]).toBeLessThanOrEqual(severity[here.lines[i]!.state]);
      }
    }),
  );
});

test("at the depth a line asks for, the propeller stands on the line", () => {
  fc.assert(
    fc.property(thruster, (at) => {
      const { lines } = cavitation(CavitationRequest.parse({ ...at, fluid: WATER }));
      for (const { line, depthNeeded, cavitationNumberNeeded } of lines) {
        if (depthNeeded === null || depthNeeded === 0) continue;
        const there = cavitation(
          CavitationRequest.parse({ ...at, fluid: WATER, shaftImmersion: depthNeeded * (1 + 1e-9) }),
        );
        expectClose(there.cavitationNumber, cavitationNumberNeeded!, 1e-8);
        expect(["near", "below"]).toContain(there.lines.find((other) => other.line === line)!.state);
      }
    }),
  );
});

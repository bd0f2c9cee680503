import { polynomialsAt } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { alongAdvance, coefficientAt, POWERS } from "../../shared/propeller/series/pitchPlane.ts";
import { seriesPlanes } from "../../shared/propeller/series/seriesPlanes.ts";
import type { BenchRow } from "./benchRow.ts";

const SCREW = { family: "wageningen-b", blades: 4, areaRatio: 0.7, pitchRatio: 1 } as const;
const COUNT = 200_000;

function perSecond(evaluate: (i: number) => number): { readonly rate: number; readonly sum: number } {
  let sum = 0;
  for (let i = 0; i < COUNT / 10; i++) sum += evaluate(i);
  const start = performance.now();
  for (let i = 0; i < COUNT; i++) sum += evaluate(i);
  return { rate: (1000 * COUNT) / (performance.now() - start), sum };
}

/**
 * K_T and K_Q of a B screw along J, and with the pitch changing each time, as the search for the best pitch asks for
 * them.
 */
export function measureSeries(): BenchRow[] {
  const { thrust, torque } = polynomialsAt({ series: SCREW });
  const alongJ = perSecond((i) => coefficientAt(thrust, (i % 100) / 100) / coefficientAt(torque, (i % 100) / 100));
  const planes = seriesPlanes(SCREW);
  const into = { thrust: new Float64Array(POWERS), torque: new Float64Array(POWERS) };
  const overPitch = perSecond((i) => {
    const pitchRatio = 0.5 + (i % 90) / 100;
    alongAdvance(planes.thrust, pitchRatio, into.thrust);
    alongAdvance(planes.torque, pitchRatio, into.torque);
    return coefficientAt(into.thrust, 0.3) / coefficientAt(into.torque, 0.3);
  });
  const row = (what: string, rate: number): BenchRow => ({
    what,
    measured: `${Math.round(rate / 1e5) / 10} M/s`,
    wanted: "at least 0.1 M/s",
    met: rate >= 1e5,
  });
  return [
    row("B screw, K_T and K_Q at an advance ratio", alongJ.rate),
    row("B screw, K_T and K_Q at a pitch and an advance ratio", overPitch.rate),
  ];
}

import { useMemo } from "preact/hooks";
import type { DragFitData } from "../../../../../shared/model/vehicle/dragFit.ts";
import { Warnings } from "../../../../app/Warnings.tsx";
import { Chart } from "../../../../charts/Chart.tsx";
import { fittedTo } from "./fitted.ts";
import { doubtShares, fitChart } from "./fitWords.ts";

/** What a measurement comes to: sentence, picture of measured against fitted, where the doubt comes from. */
export function FitResult({ data }: { readonly data: DragFitData }) {
  const { fit, problem } = useMemo(() => fittedTo(data), [data]);
  const spec = useMemo(() => fit && fitChart(fit), [fit]);
  if (fit === null || spec === null) return <p class="warning">{problem}</p>;
  const shares = doubtShares(fit);
  return (
    <>
      <p>
        <strong>{fit.sentence}</strong>
      </p>
      <Chart spec={spec} height={260} />
      {shares.length > 0 && (
        <p class="hint">Its doubt comes from {shares.map(({ cause, share }) => `${cause} (${share})`).join(", ")}.</p>
      )}
      <Warnings items={fit.warnings} />
    </>
  );
}

import type { AlignmentPicture } from "../../../shared/model/alignment.ts";
import type { ColumnUse } from "../../../shared/model/recipe.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../charts/chartSpec.ts";

/** Both signals over the time of the log, each over its own range, so that their edges can be compared. */
export function overlayChart({ alignment, times, first, second }: AlignmentPicture): ChartSpec {
  const names = alignment.signals;
  return {
    title: "Both logs laid over each other",
    x: { label: "Time", unit: "s" },
    y: { label: "Share of the range", unit: "" },
    series: [
      curve("first", names?.first.header ?? "Log", times, first, 0),
      curve("second", names ? `${names.second.header}, electrical log` : "Electrical log", times, second, 1),
    ],
  };
}

function curve(
  id: string,
  name: string,
  times: readonly number[],
  values: readonly (number | null)[],
  style: number,
): ChartSeries {
  const points = times.flatMap((x, i): ChartPoint[] => {
    const y = values[i] ?? null;
    return y === null ? [] : [{ x, y }];
  });
  return { id, name, kind: "trace", style, points };
}

/** The run with the lag of its electrical log stated, or left to be found for null. */
export function withLag(seconds: number | null): (run: Run) => Run {
  return ({ companion, ...run }) => {
    if (companion === undefined) return run;
    const lag = seconds === null ? ({ mode: "automatic" } as const) : ({ mode: "stated", seconds } as const);
    return { ...run, companion: { ...companion, lag } };
  };
}

/** The run with what each column of its electrical log stands for. */
export function withCompanionColumns({ companion, ...run }: Run, columns: readonly ColumnUse[]): Run {
  return companion === undefined ? run : { ...run, companion: { ...companion, columns: [...columns] } };
}

export function withoutCompanion({ companion: _former, ...run }: Run): Run {
  return run;
}

import type { SeriesKind } from "./chartSpec.ts";
import { type Marker, seriesStyle } from "./seriesStyle.ts";

interface SwatchProps {
  readonly kind: SeriesKind;
  readonly style: number;
  /** The fit of the points is shown with them. */
  readonly fitted?: boolean;
}

/** The marker, dash and colour of a series as it is drawn in the picture. Says nothing to a screen reader. */
export function Swatch({ kind, style, fitted = false }: SwatchProps) {
  const { colour, marker, dash } = seriesStyle(style);
  const lined = fitted || kind === "fit" || kind === "prediction" || kind === "trace";
  return (
    <svg class={`swatch series-${colour} swatch-${kind}`} viewBox="0 0 36 16" width="36" height="16" aria-hidden="true">
      {kind === "limit" && (
        <path class="swatch-hatch" d="M0 16 16 0M6 16 22 0M12 16 28 0M18 16 34 0M24 16 36 4M0 10 10 0" />
      )}
      {lined && (
        <path
          class="swatch-line"
          d="M1 8h34"
          stroke-width={kind === "trace" ? 1.5 : 2.5}
          stroke-dasharray={kind === "prediction" ? dash.join(" ") : undefined}
        />
      )}
      {(kind === "measured" || kind === "leftOut") && (
        <>
          {kind === "measured" && <path class="swatch-line" d="M18 0v16M15.5 .5h5M15.5 15.5h5" stroke-width="1" />}
          <path class="swatch-marker" d={MARKER_PATHS[marker]} />
        </>
      )}
    </svg>
  );
}

const MARKER_PATHS: Readonly<Record<Marker, string>> = {
  circle: "M18 3.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 0 0 0-9z",
  rect: "M13.5 3.5h9v9h-9z",
  triangle: "M18 3l5 9.5H13z",
  rectRot: "M18 2.5 23.5 8 18 13.5 12.5 8z",
  crossRot: "M13.5 3.5l9 9M22.5 3.5l-9 9",
  star: "M18 2.5v11M12.5 8h11M14 4l8 8M22 4l-8 8",
};

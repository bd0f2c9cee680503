import { sentenceOf } from "../api/apiProblem.ts";
import { Icon } from "../app/Icon.tsx";
import { tell } from "../app/toast.ts";
import { chartCsv, fileNameOf } from "./chartCsv.ts";
import type { ChartSpec } from "./chartSpec.ts";
import { isOverTime } from "./overTime.ts";
import { saveFile } from "./saveFile.ts";
import type { CanvasState } from "./useCanvasChart.ts";
import { ZOOM_STEP } from "./zoomKeys.ts";

interface ChartHeadProps {
  readonly titleId: string;
  readonly spec: ChartSpec;
  readonly hidden: ReadonlySet<string>;
  readonly picture: CanvasState;
  readonly tabled: boolean;
  readonly onTable: (tabled: boolean) => void;
}

/** The title of a chart, and what can be done with all of it. */
export function ChartHead({ titleId, spec, hidden, picture, tabled, onTable }: ChartHeadProps) {
  const { zoomed, zoom } = picture;
  return (
    <figcaption class="chart-head">
      <span class="chart-title" id={titleId}>
        {spec.title}
      </span>
      <span class="chart-tools">
        {zoomed && (
          <button type="button" class="quiet" onClick={zoom.reset}>
            Whole picture
          </button>
        )}
        {isOverTime(spec) && (
          <>
            <ZoomButton label="Zoom in" path="M12 6v12M6 12h12" run={() => zoom.by(ZOOM_STEP)} />
            <ZoomButton label="Zoom out" path="M6 12h12" off={!zoomed} run={() => zoom.by(1 / ZOOM_STEP)} />
          </>
        )}
        <button type="button" class="quiet" aria-pressed={tabled} onClick={() => onTable(!tabled)}>
          Table
        </button>
        <button type="button" class="quiet" onClick={() => saveCsv(spec)}>
          CSV
        </button>
        <button type="button" class="quiet" onClick={() => void savePng(spec, hidden)}>
          PNG
        </button>
      </span>
    </figcaption>
  );
}

interface ZoomButtonProps {
  readonly label: string;
  readonly path: string;
  readonly run: () => void;
  readonly off?: boolean;
}

function ZoomButton({ label, path, run, off = false }: ZoomButtonProps) {
  return (
    <button type="button" class="quiet icon" aria-label={label} title={label} disabled={off} onClick={run}>
      <Icon path={path} size={16} />
    </button>
  );
}

function saveCsv(spec: ChartSpec): void {
  // The mark at the start makes spreadsheets read the file as UTF-8.
  saveFile(new Blob(["\ufeff", chartCsv(spec)], { type: "text/csv;charset=utf-8" }), fileNameOf(spec.title, "csv"));
}

async function savePng(spec: ChartSpec, hidden: ReadonlySet<string>): Promise<void> {
  try {
    const { pictureFile } = await import("./pictureFile.ts");
    saveFile(await pictureFile(spec, hidden), fileNameOf(spec.title, "png"));
  } catch (thrown) {
    tell({ tone: "problem", text: sentenceOf(thrown) });
  }
}

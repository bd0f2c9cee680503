import { CanvasChart } from "./canvasChart.ts";
import type { ChartSpec } from "./chartSpec.ts";
import { hatch } from "./hatch.ts";
import { type LegendEntry, legendEntries } from "./legendEntries.ts";
import { type Palette, readPalette } from "./palette.ts";
import { type Marker, seriesStyle } from "./seriesStyle.ts";
import { tagsOf } from "./tags.ts";

const WIDTH = 1600;
const CHART_HEIGHT = 900;
const MARGIN = 40;
const LINE = 34;

const COLUMNS = 2;

/** The chart as a picture that stands alone: white ground, title, axis titles and legend drawn in. */
export async function pictureFile(spec: ChartSpec, hidden: ReadonlySet<string>): Promise<Blob> {
  const palette = { ...readPalette(document.body, "light"), paper: "rgb(255, 255, 255)" };
  const tags = tagsOf(spec);
  const entries = legendEntries(spec.series.filter(({ id }) => !hidden.has(id)));
  const legendHeight = Math.ceil(entries.length / COLUMNS) * LINE;
  const sheet = document.createElement("canvas");
  sheet.width = WIDTH;
  sheet.height = MARGIN + LINE * 1.5 + CHART_HEIGHT + legendHeight + MARGIN;
  const pen = sheet.getContext("2d")!;
  pen.fillStyle = palette.paper;
  pen.fillRect(0, 0, sheet.width, sheet.height);
  pen.fillStyle = palette.ink;
  pen.font = "600 30px system-ui, sans-serif";
  pen.textBaseline = "middle";
  pen.fillText(spec.title, MARGIN, MARGIN + LINE / 2, WIDTH - 2 * MARGIN);
  const chart = stillChart(spec, hidden, palette);
  pen.drawImage(chart, MARGIN, MARGIN + LINE * 1.5, WIDTH - 2 * MARGIN, CHART_HEIGHT);
  const top = sheet.height - MARGIN - legendHeight;
  entries.forEach((entry, at) => {
    const tag = tags.find(({ series }) => entry.ids.includes(series.id));
    const name = tag === undefined ? entry.name : `${tag.number}  ${entry.name}`;
    drawLegendEntry(pen, { ...entry, name }, palette, {
      left: MARGIN + (at % COLUMNS) * ((WIDTH - 2 * MARGIN) / COLUMNS),
      middle: top + (Math.floor(at / COLUMNS) + 0.5) * LINE,
    });
  });
  return pngOf(sheet);
}

function pngOf(sheet: HTMLCanvasElement): Promise<Blob> {
  return new Promise((resolve, reject) => {
    sheet.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error("The browser could not make the picture."))),
      "image/png",
    );
  });
}

/** Drawn at half size and twice the pixels, so that lettering is as large against the picture as on the screen. */
function stillChart(spec: ChartSpec, hidden: ReadonlySet<string>, palette: Palette): HTMLCanvasElement {
  const canvas = document.createElement("canvas");
  canvas.width = (WIDTH - 2 * MARGIN) / 2;
  canvas.height = CHART_HEIGHT / 2;
  const chart = new CanvasChart(canvas, { spec, hidden, cursor: null, palette }, () => ({}), true);
  const copy = document.createElement("canvas");
  copy.width = canvas.width;
  copy.height = canvas.height;
  copy.getContext("2d")!.drawImage(canvas, 0, 0);
  chart.destroy();
  return copy;
}

interface LegendPlace {
  readonly left: number;
  readonly middle: number;
}

/** One entry as the legend on the page has it: marker or line, a marker on its fit, name and words. */
function drawLegendEntry(pen: CanvasRenderingContext2D, entry: LegendEntry, palette: Palette, place: LegendPlace) {
  const { left, middle } = place;
  pen.save();
  drawSwatch(pen, entry, palette, place);
  pen.restore();
  pen.fillStyle = palette.ink;
  pen.font = "24px system-ui, sans-serif";
  const words = entry.words === "" ? "" : ` (${entry.words})`;
  pen.fillText(`${entry.name}${words}`, left + 64, middle, (WIDTH - 2 * MARGIN) / 2 - 80);
}

function drawSwatch(
  pen: CanvasRenderingContext2D,
  { shown, fitted }: LegendEntry,
  palette: Palette,
  { left, middle }: LegendPlace,
): void {
  const style = seriesStyle(shown.style);
  const colour = palette.series[style.colour]!;
  pen.strokeStyle = colour;
  pen.fillStyle = colour;
  pen.lineWidth = 3;
  const isMarked = shown.kind === "measured" || shown.kind === "leftOut";
  if (shown.kind === "limit") {
    pen.fillStyle = hatch(pen, "limit", palette.hatch);
    pen.fillRect(left, middle - 10, 50, 20);
  }
  if (fitted || (shown.kind !== "limit" && !isMarked)) {
    pen.setLineDash(shown.kind === "prediction" ? style.dash.map((length) => length * 1.3) : []);
    pen.beginPath();
    pen.moveTo(left, middle);
    pen.lineTo(left + 50, middle);
    pen.stroke();
  }
  if (isMarked) {
    pen.beginPath();
    markerPath(pen, style.marker, left + 25, middle, 9);
    if (shown.kind === "measured" && style.marker !== "crossRot" && style.marker !== "star") pen.fill();
    pen.stroke();
  }
}

/** Corners of each marker, as parts of its radius. */
const CORNERS: Readonly<Record<Exclude<Marker, "circle">, readonly (readonly [number, number])[]>> = {
  rect: [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ],
  rectRot: [
    [0, -1],
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ],
  triangle: [
    [0, -1],
    [1, 1],
    [-1, 1],
    [0, -1],
  ],
  crossRot: [
    [-1, -1],
    [1, 1],
    [0, 0],
    [1, -1],
    [-1, 1],
  ],
  star: [
    [0, -1],
    [0, 1],
    [0, 0],
    [-1, 0],
    [1, 0],
    [0, 0],
    [-1, -1],
    [1, 1],
    [0, 0],
    [1, -1],
    [-1, 1],
  ],
};

function markerPath(pen: CanvasRenderingContext2D, marker: Marker, x: number, y: number, r: number): void {
  if (marker === "circle") {
    pen.arc(x, y, r, 0, 2 * Math.PI);
    return;
  }
  CORNERS[marker].forEach(([dx, dy], at) => {
    if (at === 0) pen.moveTo(x + r * dx, y + r * dy);
    else pen.lineTo(x + r * dx, y + r * dy);
  });
}

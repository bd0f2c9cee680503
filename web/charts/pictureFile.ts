import { CanvasChart } from "./canvasChart.ts";
import type { ChartSeries, ChartSpec } from "./chartSpec.ts";
import { hatch } from "./hatch.ts";
import { type Palette, readPalette } from "./palette.ts";
import { kindWords, type Marker, seriesStyle } from "./seriesStyle.ts";

const WIDTH = 1600;
const CHART_HEIGHT = 900;
const MARGIN = 40;
const LINE = 34;

/** The chart as a picture that stands alone: white ground, title, axis titles and legend drawn in. */
export async function pictureFile(spec: ChartSpec, hidden: ReadonlySet<string>): Promise<Blob> {
  const palette = { ...readPalette(document.body, "light"), paper: "rgb(255, 255, 255)" };
  const shown = spec.series.filter(({ id }) => !hidden.has(id));
  const columns = 2;
  const legendHeight = Math.ceil(shown.length / columns) * LINE;
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
  shown.forEach((series, at) => {
    const left = MARGIN + (at % columns) * ((WIDTH - 2 * MARGIN) / columns);
    drawLegendEntry(
      pen,
      series,
      palette,
      left,
      sheet.height - MARGIN - legendHeight + (Math.floor(at / columns) + 0.5) * LINE,
    );
  });
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

function drawLegendEntry(
  pen: CanvasRenderingContext2D,
  series: ChartSeries,
  palette: Palette,
  left: number,
  middle: number,
) {
  const style = seriesStyle(series.style);
  const colour = palette.series[style.colour]!;
  pen.save();
  pen.strokeStyle = colour;
  pen.fillStyle = colour;
  pen.lineWidth = 3;
  if (series.kind === "limit") {
    pen.fillStyle = hatch(pen, "limit", palette.hatch);
    pen.fillRect(left, middle - 10, 50, 20);
  } else if (series.kind === "measured" || series.kind === "leftOut") {
    pen.beginPath();
    markerPath(pen, style.marker, left + 25, middle, 9);
    if (series.kind === "measured" && style.marker !== "crossRot" && style.marker !== "star") pen.fill();
    pen.stroke();
  } else {
    pen.setLineDash(series.kind === "prediction" ? style.dash.map((length) => length * 1.3) : []);
    pen.beginPath();
    pen.moveTo(left, middle);
    pen.lineTo(left + 50, middle);
    pen.stroke();
  }
  pen.restore();
  pen.fillStyle = palette.ink;
  pen.font = "24px system-ui, sans-serif";
  pen.fillText(`${series.name} (${kindWords(series)})`, left + 64, middle, (WIDTH - 2 * MARGIN) / 2 - 80);
}

function markerPath(pen: CanvasRenderingContext2D, marker: Marker, x: number, y: number, r: number): void {
  const corners: Readonly<Record<Exclude<Marker, "circle">, readonly (readonly [number, number])[]>> = {
    rect: [
      [-r, -r],
      [r, -r],
      [r, r],
      [-r, r],
      [-r, -r],
    ],
    rectRot: [
      [0, -r],
      [r, 0],
      [0, r],
      [-r, 0],
      [0, -r],
    ],
    triangle: [
      [0, -r],
      [r, r],
      [-r, r],
      [0, -r],
    ],
    crossRot: [
      [-r, -r],
      [r, r],
      [0, 0],
      [r, -r],
      [-r, r],
    ],
    star: [
      [0, -r],
      [0, r],
      [0, 0],
      [-r, 0],
      [r, 0],
      [0, 0],
      [-r, -r],
      [r, r],
      [0, 0],
      [r, -r],
      [-r, r],
    ],
  };
  if (marker === "circle") {
    pen.arc(x, y, r, 0, 2 * Math.PI);
    return;
  }
  corners[marker].forEach(([dx, dy], at) => {
    if (at === 0) pen.moveTo(x + dx, y + dy);
    else pen.lineTo(x + dx, y + dy);
  });
}

import type { Plugin } from "chart.js";
import type { Drawing } from "./drawing.ts";

/** Draws the keyboard's data cursor, and the markers of the x axis. */
export function cursorPlugin(drawing: Drawing): Plugin {
  return {
    id: "cursor",
    afterDatasetsDraw(chart) {
      const { ctx, chartArea } = chart;
      const x = chart.scales["x"]!;
      ctx.save();
      ctx.font = "12px system-ui, sans-serif";
      for (const marker of drawing.spec.markers ?? []) {
        const at = x.getPixelForValue(marker.x);
        if (at < chartArea.left || at > chartArea.right) continue;
        vertical(ctx, at, chartArea.top, chartArea.bottom, drawing.palette.soft, [4, 4]);
        const room = chartArea.right - at > ctx.measureText(marker.label).width + 8;
        ctx.textAlign = room ? "left" : "right";
        ctx.fillStyle = drawing.palette.ink;
        ctx.fillText(marker.label, at + (room ? 5 : -5), chartArea.top + 13);
      }
      const series = drawing.spec.series.find(({ id }) => id === drawing.cursor?.seriesId);
      const point = drawing.cursor && series?.points[drawing.cursor.index];
      if (series && point) {
        const y = chart.scales[series.secondAxis && drawing.spec.y2 ? "y2" : "y"]!;
        const [px, py] = [x.getPixelForValue(point.x), y.getPixelForValue(point.y)];
        vertical(ctx, px, chartArea.top, chartArea.bottom, drawing.palette.focus, []);
        ctx.beginPath();
        ctx.arc(px, py, 9, 0, 2 * Math.PI);
        ctx.lineWidth = 3;
        ctx.stroke();
      }
      ctx.restore();
    },
  };
}

function vertical(
  ctx: CanvasRenderingContext2D,
  x: number,
  top: number,
  bottom: number,
  colour: string,
  dash: number[],
): void {
  ctx.beginPath();
  ctx.setLineDash(dash);
  ctx.moveTo(x, top);
  ctx.lineTo(x, bottom);
  ctx.strokeStyle = colour;
  ctx.lineWidth = 1;
  ctx.stroke();
  ctx.setLineDash([]);
}

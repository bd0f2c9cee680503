export type HatchKind = "limit" | "plateau" | "tare" | "leftOut" | "rejected";

const SIZE = 10;

/** A pattern that says what an area is without colour: limit diagonal, tare dotted, left out crossed, not taken falling, plateau plain lines. */
export function hatch(context: CanvasRenderingContext2D, kind: HatchKind, colour: string): CanvasPattern | string {
  const tile = document.createElement("canvas");
  tile.width = SIZE;
  tile.height = SIZE;
  const pen = tile.getContext("2d");
  if (!pen) return colour;
  pen.strokeStyle = colour;
  pen.fillStyle = colour;
  pen.lineWidth = 1;
  DRAW[kind](pen);
  return context.createPattern(tile, "repeat") ?? colour;
}

const DRAW: Readonly<Record<HatchKind, (pen: CanvasRenderingContext2D) => void>> = {
  limit: rising,
  rejected: falling,
  leftOut: (pen) => {
    rising(pen);
    falling(pen);
  },
  tare: (pen) => {
    pen.fillRect(2, 2, 1.5, 1.5);
    pen.fillRect(7, 7, 1.5, 1.5);
  },
  plateau: (pen) => pen.fillRect(0, SIZE - 1, SIZE, 0.6),
};

// Each diagonal is drawn three times, so that it joins at the corners of neighbouring tiles.
function rising(pen: CanvasRenderingContext2D): void {
  strokes(
    pen,
    [-SIZE, 0, SIZE].map((shift) => [shift, SIZE, shift + SIZE, 0] as const),
  );
}
function falling(pen: CanvasRenderingContext2D): void {
  strokes(
    pen,
    [-SIZE, 0, SIZE].map((shift) => [shift, 0, shift + SIZE, SIZE] as const),
  );
}
function strokes(pen: CanvasRenderingContext2D, lines: readonly (readonly [number, number, number, number])[]): void {
  pen.beginPath();
  for (const [x1, y1, x2, y2] of lines) {
    pen.moveTo(x1, y1);
    pen.lineTo(x2, y2);
  }
  pen.stroke();
}

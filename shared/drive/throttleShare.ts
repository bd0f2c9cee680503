import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";

/** Pulse widths that controllers take, from closed to open, µs. Common practice, no source. */
const PULSE = { closed: 1000, open: 2000 };

/** `throttle` if it is 0 (closed) to 1 (fully open). Throws OutOfDomain that says what else was likely meant. */
export function throttleShare(throttle: number): number {
  if (throttle >= 0 && throttle <= 1) return throttle;
  const found = `throttle is ${Number.isNaN(throttle) ? "not a number" : throttle}`;
  throw new OutOfDomain({ found, needed: "0 (closed) to 1 (fully open)", mend: meant(throttle) });
}

function meant(throttle: number): string {
  if (Number.isNaN(throttle)) return "Write for example 0.6 for 60 %";
  if (throttle < 0) return `Running astern has throttle 0 to 1 too: write ${formatNumber(Math.min(1, -throttle))}`;
  const { closed, open } = PULSE;
  const share = (pulse: number) => formatNumber(Math.max(0, (pulse - closed) / (open - closed)));
  const readings = [
    throttle <= 100 ? `${formatNumber(throttle / 100)} if it is per cent` : "",
    throttle * 1000 <= open && throttle * 1000 > closed
      ? `${share(throttle * 1000)} if it is a pulse of 1 to 2 ms`
      : "",
    throttle >= closed / 2 && throttle <= open ? `${share(throttle)} if it is a pulse of ${closed} to ${open} µs` : "",
  ].filter((reading) => reading !== "");
  return readings.length > 0 ? `Write ${readings.join(", or ")}` : "Write 1 for full throttle";
}

import { once } from "node:events";
import { createWriteStream } from "node:fs";

/** A long log at 1 kHz: twenty steps of the command with rests between, eight columns, about 50 bytes a row. */
export async function writeLongLog(path: string, rows: number): Promise<void> {
  const out = createWriteStream(path);
  out.write("time (s),throttle (us),thrust (gf),speed (rpm),voltage (V),current (A),temperature (C),torque (mNm)\n");
  let seed = 1;
  const noise = () => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647 - 0.5;
  };
  for (let row = 0; row < rows; ) {
    const lines: string[] = [];
    for (const end = Math.min(rows, row + 10_000); row < end; row++) {
      const step = Math.floor((20 * row) / rows);
      const throttle = step % 2 === 0 ? 1000 : 1150 + 80 * ((step - 1) / 2);
      const rpm = throttle === 1000 ? 0 : 3 * (throttle - 900) + noise() * 8;
      const load = 0.000155 * rpm * rpm + 31 + row * 2e-6 + noise() * 6;
      lines.push(
        `${(row / 1000).toFixed(3)},${throttle},${load.toFixed(2)},${rpm.toFixed(1)},${(15.2 - rpm * 2e-4 + noise() * 0.02).toFixed(3)},${(rpm * rpm * 2e-6 + noise() * 0.05).toFixed(3)},${(22 + row * 1e-6).toFixed(2)},${(rpm * rpm * 3e-5 + noise() * 2).toFixed(2)}`,
      );
    }
    if (!out.write(`${lines.join("\n")}\n`)) await once(out, "drain");
  }
  out.end();
  await once(out, "finish");
}

interface StandLogOptions {
  /** Throttle steps, 0 to 1; the propeller rests before and after them. */
  readonly steps?: readonly number[];
  readonly rowsPerStep?: number;
  /** Begin and end with the propeller at rest. */
  readonly rest?: boolean;
}

/**
 * A log as a quiet stand would write it: 10 readings a second, thrust in newton after the square law with K_T 0.2 for a
 * 76 mm propeller in fresh water, and small waves on every channel in place of noise.
 */
export function standLog({
  steps = [0.3, 0.45, 0.6, 0.75, 0.9],
  rowsPerStep = 100,
  rest = true,
}: StandLogOptions = {}): string {
  const throttles = rest ? [0, ...steps, 0] : steps;
  const rows = throttles.flatMap((throttle, step) =>
    Array.from({ length: rowsPerStep }, (_, i) => row(step * rowsPerStep + i, throttle)),
  );
  return `time (s),command (%),thrust (N),speed (rpm),voltage (V),current (A)\n${rows.join("\n")}\n`;
}

function row(index: number, throttle: number): string {
  const wave = Math.sin(index * 2.399963);
  const rotationRate = 60 * throttle;
  const thrust = 0.2 * 998.6 * rotationRate ** 2 * 0.076 ** 4 + 0.01 * wave;
  const current = throttle === 0 ? 0 : 0.4 + 12 * throttle ** 3;
  const rpm = throttle === 0 ? 0 : rotationRate * 60 + 3 * wave;
  const cells = [
    (index / 10).toFixed(1),
    throttle * 100,
    thrust.toFixed(4),
    rpm.toFixed(1),
    "12.00",
    current.toFixed(3),
  ];
  return cells.join(",");
}

/**
 * A log made by formulas alone (no random numbers, no code of this project), so that the independent calculation
 * recorded in `wholeChain.test.ts` could be done on exactly the same text.
 *
 * 20 Hz; command steps of 12 s between rests of 6 s; spin-up with a time constant of 0.3 s; a load cell whose zero
 * starts at 37 gf and creeps 0.05 gf/s; small ripples of incommensurate frequencies stand for noise.
 */
const STEPS = [0, 1200, 0, 1500, 0, 1900, 0, 2400, 0, 2000, 0, 1300, 0];
const RATE = 20;

export function wholeChainLog(): string {
  const lines = ["clock (s),command (us),load (gf),speed (rpm),supply (V),draw (A)"];
  let sample = 0;
  let rpm = 0;
  for (const target of STEPS) {
    const length = (target === 0 ? 6 : 12) * RATE;
    for (let i = 0; i < length; i++, sample++) {
      const t = sample / RATE;
      rpm += (target - rpm) * (1 - Math.exp(-1 / (RATE * 0.3)));
      if (target === 0 && rpm < 5) rpm = 0;
      const ripple = Math.sin(7.3 * t) + Math.sin(11.9 * t + 1) + Math.sin(17.1 * t + 2);
      const turned = rpm === 0 ? 0 : rpm + 1.5 * ripple;
      const load = 37 + 0.05 * t + 1.7e-4 * rpm * rpm + 1.2 * Math.sin(5.1 * t + 0.5) + 0.8 * Math.cos(13.7 * t);
      const motorCurrent = 0.55 + 1.0102e-6 * rpm * rpm;
      const power = motorCurrent * (rpm / 490 + 0.128 * motorCurrent);
      const draw = rpm === 0 ? 0.04 : power / 15.1 + 0.01 * Math.sin(3.3 * t);
      const volts = 15.2 - 0.035 * draw + 0.004 * Math.cos(4.1 * t);
      const command = target === 0 ? 1000 : 1000 + target / 4;
      lines.push(
        [t.toFixed(2), command, load.toFixed(2), turned.toFixed(1), volts.toFixed(3), draw.toFixed(3)].join(","),
      );
    }
  }
  return `${lines.join("\n")}\n`;
}

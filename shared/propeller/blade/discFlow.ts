/** |κ| up to which momentum theory holds: thrust against the flow (windmill), and thrust while driven back. */
const HEAVY_WINDMILL = 2 / 3;
const HEAVY_ASTERN = 2;

/**
 * Stream that carries away what a blade gives to the fluid, over the speed of the flow at the blade, m/W (0 or more).
 *
 * With W that speed, φ its angle and K = σ c_n / 4F the thrust of the blades as momentum counts it, the disc adds W K/m to
 * the flow along the shaft, so that far ahead it is V = W (sin φ - K/m). In terms of κ = K / (sin φ |sin φ|) and V/W:
 *
 *   V/W = sin φ (1 - κ),  m = |sin φ|       for -2/3 <= κ <= 2    Rankine-Froude; κ = 1 is rest
 *   V/W = sin φ (2 + sqrt(-18 κ - 3)) / 3   for κ < -2/3          windmill, thrust coefficient 8/9 - 4a/9 + 14a²/9
 *   V/W = -sin φ sqrt(2 κ - 3)              for κ > 2             driven back against its own stream
 *
 * Momentum theory has no answer where the stream that leaves meets the one that comes. The windmill line is the empirical
 * one; the last line goes on from Rankine-Froude with equal value and slope to the same end, so that nothing jumps where
 * the flow through the disc turns round (φ = 0).
 *
 * Source   momentum: Ning, A simple solution method for the blade element momentum equations with guaranteed convergence,
 *          Wind Energy 17 (2014) 1327; all directions: Ning, Using blade element momentum methods with gradient-based
 *          design optimization, Struct. Multidiscip. Optim. 64 (2021); windmill: Buhl, A new empirical relationship between
 *          thrust coefficient and induction factor for the turbulent windmill state, NREL/TP-500-36834 (2005), taken per
 *          F. The line for κ > 2: own continuation, no source.
 */
export function carryingStream(K: number, sine: number): number {
  const square = sine * sine;
  const s = sine < 0 ? -1 : 1;
  const loading = s * K;
  if (loading > HEAVY_ASTERN * square) return K / (sine + s * Math.sqrt(2 * loading - 3 * square));
  if (loading < -HEAVY_WINDMILL * square) return (3 * K) / (sine - s * Math.sqrt(-18 * loading - 3 * square));
  return Math.abs(sine);
}

/**
 * Whether a solved ring lies where momentum theory has no answer, from the advance speed V and the induced velocity u, m/s:
 * V/(V + u) above 5/3 or below -1, which are κ of -2/3 and 2.
 */
export function beyondMomentum(V: number, u: number): boolean {
  const ratio = V / (V + u);
  return ratio > 1 + HEAVY_WINDMILL || ratio < 1 - HEAVY_ASTERN;
}

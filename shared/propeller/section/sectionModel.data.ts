/**
 * Numbers of the section model. Those called fitted were chosen together, once, on the larger of the research propellers in
 * `researchPropellers.data.ts` (static and advancing); the smaller one was held back. The others are from what stands with
 * them. Below Re 1e5 nobody can do without such numbers: replace them by measured polars where there are some.
 */

/**
 * τ, profile drag of a smooth section at low Reynolds number over the laminar friction of its two sides. Fitted; measured
 * thin plates at Re 4e4 to 1.7e5 lie at about twice the laminar friction (Pelletier & Mueller, J. Aircraft 37 (2000)).
 */
export const TRANSITION_FACTOR = 2.12;

/** Re at which the turbulent line 0.044/Re^(1/6) - 5/Re^(2/3) is greatest: (20/0.044)². Exact. */
export const PEAK_OF_TURBULENT_LINE = (20 / 0.044) ** 2;

/** Growth of the lift slope with t/c: 2π (1 + 0.77 t/c). Joukowski sections; e.g. Abbott & von Doenhoff (1959), ch. 3. */
export const LIFT_SLOPE_THICKNESS = 0.77;

/** λ, lift lost to the boundary layer: a = a_∞ / (1 + λ/√Re), since the layer's thickness goes with 1/√Re. Fitted. */
export const LIFT_LOSS = 33;

/** Greatest lift coefficient of an uncambered section at Re 1e5. Fitted. */
export const GREATEST_LIFT = 1.06;

/** Growth of the greatest lift coefficient with log₁₀ Re. Fitted over Re 2e4 to 7e4. */
export const GREATEST_LIFT_GROWTH = 0.09;

/** Part of the lift that camber makes at zero incidence by which the greatest lift gains. Common practice, no source. */
export const CAMBER_LIFT_GAIN = 0.5;

/** Part of the greatest lift up to which the lift grows straight; above it a parabola. Common practice, no source. */
export const STRAIGHT_PART = 0.75;

/** Part of the suction on the leading edge that is lost: the drag grows by it with the square of the lift. Fitted. */
export const SUCTION_LOST = 0.15;

/** Drag coefficient that separation has added at the greatest lift, times √Re. Fitted. */
export const STALL_DRAG = 32.4;

/** Lift of a section that meets the flow with its trailing edge, over that with its nose. Common practice, no source. */
export const REVERSED_LIFT = 0.7;

/**
 * Growth of the lift of a turning section beyond its stall: C_L + tanh(3 (c/r)²) (a sin x cos x - C_L), whole to 30°,
 * nothing from 50° up. The boundary layer is thrown outwards and stays thin. Snel, Houwink & Bosschers, Sectional
 * prediction of lift coefficients on rotating wind turbine blades in stall, ECN-C-93-052 (1993), from memory.
 */
export const STALL_DELAY = 3;
export const DELAY_FADES = Math.PI / 6;
export const DELAY_ENDS = (5 * Math.PI) / 18;

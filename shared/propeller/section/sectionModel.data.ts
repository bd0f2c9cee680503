/**
 * Numbers of the section model. Those called fitted were chosen once on the low-Reynolds research propellers of
 * `researchPropellers.data.ts`; the others are from the source that stands with them.
 */

/**
 * τ, profile drag of a smooth section at low Reynolds number over the laminar friction of its two sides. Fitted; measured
 * thin plates at Re 4e4 to 1.7e5 lie at about twice the laminar friction (Pelletier & Mueller, J. Aircraft 37 (2000)).
 */
export const TRANSITION_FACTOR = 2;

/** Re at which the turbulent line 0.044/Re^(1/6) - 5/Re^(2/3) is greatest: (20/0.044)². Exact. */
export const PEAK_OF_TURBULENT_LINE = (20 / 0.044) ** 2;

/** Power in which the laminar and the turbulent line are added; rounds the corner within a factor 1.19. */
export const ROUND_OFF = 4;

/** Growth of the lift slope with t/c: 2π (1 + 0.77 t/c). Joukowski sections; e.g. Hoerner & Borst, Fluid-Dynamic Lift. */
export const LIFT_SLOPE_THICKNESS = 0.77;

/** Loss of lift to the boundary layer, times 1/√Re: it grows as the layer does. Fitted. */
export const LIFT_LOSS = 30;

/** Greatest lift coefficient without camber at Re 1e5. Middle of measured plates and sections. Fitted. */
export const GREATEST_LIFT = 0.9;

/** Growth of the greatest lift with log₁₀ Re. Common practice, no source. */
export const GREATEST_LIFT_GROWTH = 0.25;

/** Part of the lift at zero incidence, which camber makes, that the greatest lift gains. Common practice, no source. */
export const CAMBER_LIFT_GAIN = 0.5;

/** Part of the greatest lift up to which the lift grows straight; above it a parabola. Common practice, no source. */
export const STRAIGHT_PART = 0.75;

/** Part of the suction on the leading edge that the section keeps; without it lift would cost C_L tan α. Fitted. */
export const EDGE_SUCTION = 0.8;

/** Lift of a section that meets the flow with its trailing edge, over that with its nose. Common practice, no source. */
export const REVERSED_LIFT = 0.7;

/**
 * Factors of idealised blade sections: half-thickness (t/2) g(u) on a parabolic camber line f (1 - u²), u = 2x/c from
 * mid-chord, thickness laid normal to the chord.
 *
 *   A = area c t,   centroid height = centroid f,   I about the chord's direction = c t (own t² + camber f²),
 *   I about the normal = normal c³ t
 *
 * Exact integrals of the shape: `parabolic` g = 1 - u² (a lens; with f = t/2 the flat-faced segment of the older
 * propeller texts, I = 8/175 c t³), `ellipse` g = sqrt(1 - u²), `plate` g = 1.
 */
export const SECTION_SHAPES = {
  parabolic: { area: 2 / 3, centroid: 4 / 5, own: 4 / 105, camber: 16 / 525, normal: 1 / 30 },
  ellipse: { area: Math.PI / 4, centroid: 3 / 4, own: Math.PI / 64, camber: Math.PI / 64, normal: Math.PI / 64 },
  plate: { area: 1, centroid: 2 / 3, own: 1 / 12, camber: 4 / 45, normal: 1 / 12 },
} as const;

export type SectionShape = keyof typeof SECTION_SHAPES;

/** Half-thickness over its greatest, against u = 2x/c. */
export const HALF_THICKNESS: Readonly<Record<SectionShape, (u: number) => number>> = {
  parabolic: (u) => 1 - u * u,
  ellipse: (u) => Math.sqrt(Math.max(0, 1 - u * u)),
  plate: () => 1,
};

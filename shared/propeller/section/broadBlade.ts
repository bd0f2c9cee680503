/**
 * Lift of a section in a broad blade over that of the same section in a slender one at the same induced velocity.
 *
 *   k = (AR + 2) / (2 + sqrt(AR² + 4))
 *
 * Blade elements are a lifting line: they know how much the flow is turned at the blade, not that it is turned less at the
 * nose and more at the tail, which takes incidence and camber from a chord that is long against the blade. k is the lift
 * of a wing by lifting surface over that by lifting line; the same is taken for the zero-lift angle, so that camber loses k².
 *
 * Source   Helmbold, Der unverwundene Ellipsenflügel als tragende Fläche, Jahrbuch der deutschen Luftfahrtforschung (1942),
 *          a/2π = AR/(2 + sqrt(AR² + 4)), over Prandtl's AR/(AR + 2). Its use for blades and for camber: own, held against
 *          the Wageningen B series in tests/reference/bladeElements.test.ts.
 * Range    aspect ratio, length of the blade over its mean chord, greater than 0; k goes from 1/2 to 1.
 *
 * @example broadBlade(2) // 0.828
 */
export function broadBlade(aspectRatio: number): number {
  return (aspectRatio + 2) / (2 + Math.sqrt(aspectRatio * aspectRatio + 4));
}

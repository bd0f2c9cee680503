/** Ahead, to starboard, down; m, N or m/s. */
export type Triple = readonly [number, number, number];

export const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const size = (a: Triple): number => Math.sqrt(dot(a, a));

/** a + times b. */
export const sum = (a: Triple, b: Triple, times = 1): Triple => [
  a[0] + times * b[0],
  a[1] + times * b[1],
  a[2] + times * b[2],
];

export const times = (a: Triple, factor: number): Triple => [factor * a[0], factor * a[1], factor * a[2]];

export const cross = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

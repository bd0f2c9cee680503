/** Diameter that is drawn where nobody has measured or stated one, m: an example, and said to be one wherever it shows. */
export const EXAMPLE_DIAMETER = 0.076;

/** Rows beyond which a table without time was not written by hand. Common practice, no source. */
export const LONGEST_NOTEBOOK = 200;

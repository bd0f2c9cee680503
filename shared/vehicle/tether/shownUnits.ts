import type { ShownUnit } from "../../quantity/format.ts";

const plain = (symbol: string): ShownUnit => ({ symbol, factor: 1 });

export const METRE = plain("m");
export const METRE_PER_SECOND = plain("m/s");
export const SECOND = plain("s");
export const NEWTON = plain("N");
export const HERTZ = plain("Hz");

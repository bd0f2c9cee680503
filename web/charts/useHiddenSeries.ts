import { useState } from "preact/hooks";

const NOTHING: ReadonlySet<string> = new Set();

/** Series taken out of the picture, and the switch that takes those of one legend entry out or brings them back. */
export function useHiddenSeries() {
  const [hidden, setHidden] = useState(NOTHING);
  const toggle = (ids: readonly string[]) => {
    const out = ids.every((one) => hidden.has(one));
    const others = [...hidden].filter((one) => !ids.includes(one));
    setHidden(new Set(out ? others : [...others, ...ids]));
  };
  return { hidden, toggle };
}

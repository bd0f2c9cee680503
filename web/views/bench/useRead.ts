import { useEffect, useState } from "preact/hooks";
import { sentenceOf } from "../../api/apiProblem.ts";

/** What was asked for, a sentence where it can not be had, or null while it is on its way. */
export type Reading<T> = T | string | null;

/** Reads from the workbench, and again whenever `key` changes; a reading that was overtaken is given up. */
export function useRead<T extends object>(key: string, read: (stop: AbortSignal) => Promise<T>): Reading<T> {
  const [result, setResult] = useState<Reading<T>>(null);
  useEffect(() => {
    const aborter = new AbortController();
    setResult(null);
    read(aborter.signal).then(setResult, (thrown) => {
      if (!aborter.signal.aborted) setResult(sentenceOf(thrown));
    });
    return () => aborter.abort();
  }, [key]);
  return result;
}

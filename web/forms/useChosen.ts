import { useState } from "preact/hooks";

/**
 * What a control shows, and how it takes a choice. A choice is on show from the moment it is made until `store` has
 * done with it, whatever else is drawn meanwhile; from then on what is stored: the choice, or what was before where it
 * was refused.
 */
export function useChosen<T>(stored: T, store: (choice: T) => unknown): readonly [T, (choice: T) => void] {
  const [pending, setPending] = useState<{ readonly choice: T } | null>(null);
  const choose = (choice: T) => {
    const mine = { choice };
    setPending(mine);
    void Promise.resolve(store(choice)).finally(() => setPending((now) => (now === mine ? null : now)));
  };
  return [pending === null ? stored : pending.choice, choose];
}

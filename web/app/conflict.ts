import { signal } from "@preact/signals";
import { ApiProblem } from "../api/apiProblem.ts";

export type Choice = "newer" | "mine";

/** The open question to the person at the page, if there is one. */
export const conflict = signal<{ readonly what: string; readonly choose: (choice: Choice) => void } | null>(null);

export interface Write<T> {
  /** Name of the document, for the question. */
  readonly what: string;
  readonly version: number;
  readonly write: (version: number) => Promise<T>;
  /** Brings the stored document to the page. */
  readonly load: () => Promise<unknown>;
}

/** The person chose what another tab had stored, so the change was not made and can not be undone. */
export class KeptNewer extends Error {
  constructor(what: string) {
    super(`${what}: the newer version is loaded, your change was not made.`);
    this.name = "KeptNewer";
  }
}

/**
 * Writes; where another tab wrote first, asks which version to keep and writes over it or loads it.
 * Throws KeptNewer after loading, ApiProblem for every other refusal.
 */
export async function settlingConflict<T>({ what, version, write, load }: Write<T>): Promise<T> {
  let named = version;
  for (;;) {
    try {
      return await write(named);
    } catch (thrown) {
      if (!(thrown instanceof ApiProblem) || !thrown.isConflict) throw thrown;
      if ((await asked(what)) === "newer") {
        await load();
        throw new KeptNewer(what);
      }
      named = thrown.currentVersion!;
    }
  }
}

function asked(what: string): Promise<Choice> {
  return new Promise((resolve) => {
    conflict.value = {
      what,
      choose: (choice) => {
        conflict.value = null;
        resolve(choice);
      },
    };
  });
}

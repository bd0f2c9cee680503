import { computed, signal } from "@preact/signals";
import { sentenceOf } from "../api/apiProblem.ts";
import { tell } from "./toast.ts";

/** Something a person did that can be taken back. `run` and `undo` may be called again and again, in turn. */
export interface Act {
  /** What was done, in the past tense: "Deleted Sanded 2". */
  readonly label: string;
  /** Id of a thing that will be gone one day, and this act with it. */
  readonly about?: string | undefined;
  readonly run: () => Promise<unknown>;
  readonly undo: () => Promise<unknown>;
  /** Asked when its turn has come: false where nothing would change, so that there is nothing to take back either. */
  readonly isNeeded?: () => boolean;
}

const done = signal<readonly Act[]>([]);
const undone = signal<readonly Act[]>([]);
const LONGEST = 200;

export const canUndo = computed(() => done.value.length > 0);
export const canRedo = computed(() => undone.value.length > 0);
/** Label of what an undo or redo would do now. */
export const nextUndo = computed(() => done.value.at(-1)?.label);
export const nextRedo = computed(() => undone.value.at(-1)?.label);

/** Acts run one after the other, so that two quick edits of a document name the versions they really saw. */
let queue: Promise<unknown> = Promise.resolve();
function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const next = queue.then(work, work);
  queue = next.catch(() => undefined);
  return next;
}

async function attempt(work: () => Promise<unknown>): Promise<boolean> {
  try {
    await work();
    return true;
  } catch (thrown) {
    // What a person gave up needs no explanation.
    if (thrown instanceof DOMException && thrown.name === "AbortError") return false;
    tell({ tone: "problem", text: sentenceOf(thrown) });
    return false;
  }
}

/** Does `act` and remembers it. Resolves to false, with the reason shown, where it could not be done. */
export function act(what: Act, { quiet = false }: { readonly quiet?: boolean } = {}): Promise<boolean> {
  return inTurn(async () => {
    let isNeeded = true;
    const work = async () => {
      isNeeded = what.isNeeded?.() ?? true;
      if (isNeeded) await what.run();
    };
    if (!(await attempt(work))) return false;
    if (!isNeeded) return true;
    done.value = [...done.value, what].slice(-LONGEST);
    undone.value = [];
    if (!quiet) tell({ tone: "done", text: what.label, action: { label: "Undo", run: () => void undo() } });
    return true;
  });
}

/** Takes the last act back. */
export function undo(): Promise<void> {
  return inTurn(async () => {
    const last = done.value.at(-1);
    if (!last || !(await attempt(last.undo))) return;
    done.value = done.value.slice(0, -1);
    undone.value = [...undone.value, last];
    tell({ tone: "done", text: `Taken back: ${last.label}`, action: { label: "Redo", run: () => void redo() } });
  });
}

/** Does again what was taken back last. */
export function redo(): Promise<void> {
  return inTurn(async () => {
    const last = undone.value.at(-1);
    if (!last || !(await attempt(last.run))) return;
    undone.value = undone.value.slice(0, -1);
    done.value = [...done.value, last];
    tell({ tone: "done", text: `Done again: ${last.label}`, action: { label: "Undo", run: () => void undo() } });
  });
}

/** Nothing of one project can be taken back while another is open. */
export function forgetActs(): void {
  done.value = [];
  undone.value = [];
}

/** What was done to a thing that is gone can not be taken back, and must not stand in the way of what can. */
export function forgetActsAbout(id: string): void {
  done.value = done.value.filter(({ about }) => about !== id);
  undone.value = undone.value.filter(({ about }) => about !== id);
}

/** Ctrl+Z and Ctrl+Shift+Z (Cmd on a Mac), except where a text field has an undo of its own. */
export function followKeys(): void {
  document.addEventListener("keydown", (event) => {
    if (event.key.toLowerCase() !== "z" || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    const target = event.target as HTMLElement | null;
    if (target?.closest("input:not([type=range],[type=checkbox],[type=radio]),textarea,dialog")) return;
    event.preventDefault();
    void (event.shiftKey ? redo() : undo());
  });
}

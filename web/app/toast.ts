import { signal } from "@preact/signals";

export interface Toast {
  readonly id: number;
  readonly tone: "done" | "problem";
  readonly text: string;
  readonly action?: { readonly label: string; readonly run: () => void };
}

export const toasts = signal<readonly Toast[]>([]);

let last = 0;
const SHOWN_FOR = { done: 8_000, problem: 30_000 };

/** Shows a short message. What was done last replaces what was done before, whose Undo would now mean another act. */
export function tell(toast: Omit<Toast, "id">): void {
  const id = ++last;
  const staying = toasts.value.filter(({ tone }) => tone === "problem" || toast.tone === "problem");
  toasts.value = [...staying, { ...toast, id }].slice(-3);
  setTimeout(() => dismiss(id), SHOWN_FOR[toast.tone]);
}

export function dismiss(id: number): void {
  toasts.value = toasts.value.filter((toast) => toast.id !== id);
}

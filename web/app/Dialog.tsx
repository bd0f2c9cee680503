import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { CROSS, Icon } from "./Icon.tsx";

export interface DialogProps {
  readonly title: string;
  /** Escape or the close button; without it the person must choose. */
  readonly onClose?: (() => void) | undefined;
  readonly children: ComponentChildren;
}

/** A modal dialog: the rest of the page waits, focus stays inside and returns afterwards. */
export function Dialog({ title, onClose, children }: DialogProps) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement as HTMLElement | null;
    dialog.current?.showModal();
    return () => before?.focus();
  }, []);
  return (
    <dialog
      ref={dialog}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose?.();
      }}
    >
      <header class="dialog-head">
        <h2 id={id}>{title}</h2>
        {onClose && (
          <button type="button" class="icon" aria-label="Close" onClick={onClose}>
            <Icon path={CROSS} size={16} />
          </button>
        )}
      </header>
      {children}
    </dialog>
  );
}

import { conflict } from "./conflict.ts";
import { Dialog } from "./Dialog.tsx";

/** Asks which of two versions to keep. */
export function ConflictDialog() {
  const open = conflict.value;
  if (!open) return null;
  return (
    <Dialog title={`${open.what} was changed in another tab`}>
      <p>After this page read it, someone stored a newer version: another tab, or a program. Which one shall stay?</p>
      <div class="row">
        <button type="button" class="primary" onClick={() => open.choose("newer")}>
          Load the newer
        </button>
        <button type="button" onClick={() => open.choose("mine")}>
          Keep mine (write over it)
        </button>
      </div>
    </Dialog>
  );
}

import { parsedPart } from "../../shared/model/parts/partKinds.ts";
import type { PartsTablePreview, PartsTableRequest } from "../../shared/model/partsTable.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { previewTable } from "../../shared/partsTable/previewTable.ts";
import type { TableKind } from "../../shared/partsTable/tableFields.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Store } from "../store/store.ts";

/** What an import did, with all that is needed to take it back. */
export interface ImportedParts {
  readonly added: StoredDocument<unknown>[];
  readonly changed: { readonly before: StoredDocument<unknown>; readonly after: StoredDocument<unknown> }[];
  /** Lines of the table that were left out. */
  readonly leftOut: number[];
}

/** What would become of a table of parts in this project. Throws InputProblem as `previewTable`. */
export function previewParts(
  store: Store,
  projectId: string,
  kind: TableKind,
  { name, text, choices }: PartsTableRequest,
): PartsTablePreview {
  const stored = store.parts(projectId, kind).list();
  const voltage = store.parts(projectId, "packs").list()[0]?.document.openCircuitVoltage;
  return previewTable(text, { kind, name, choices, stored, voltage });
}

/**
 * Imports a table of parts, all of it or nothing. Throws InputProblem `parts.open-questions` while anything is undecided;
 * a part that changed meanwhile is compared as it is now.
 */
export function importParts<K extends TableKind>(
  store: Store,
  projectId: string,
  kind: K,
  request: PartsTableRequest,
): ImportedParts {
  return store.transaction(() => {
    const { rows, open } = previewParts(store, projectId, kind, request);
    if (open.length > 0) throw undecided(request.name, open);
    const shelf = store.parts(projectId, kind);
    const done: ImportedParts = { added: [], changed: [], leftOut: [] };
    for (const { row, act, document, storedId } of rows) {
      const part = document === null ? null : parsedPart(kind, document);
      if (part === null || act === "skip") done.leftOut.push(row);
      else if (act === "update" && storedId !== null) {
        const before = shelf.find(storedId);
        done.changed.push({ before, after: shelf.write(storedId, before.version, part) });
      } else done.added.push(shelf.add(part));
    }
    return done;
  });
}

function undecided(name: string, open: readonly string[]): InputProblem {
  return new InputProblem({
    code: "parts.open-questions",
    where: name,
    found: `The table leaves ${open.length === 1 ? "a question" : `${open.length} questions`} open. ${open.join(" ")}`,
    needed: "a choice for each",
    mend: "Ask for the preview, which names the columns and rows, and send the choices with the table",
  });
}

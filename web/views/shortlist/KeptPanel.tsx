import { useEffect } from "preact/hooks";
import type { ShortlistEntry } from "../../../shared/model/shortlistStored.ts";
import { shortlistFile } from "../../api/shortlists.ts";
import { momentText } from "../../app/momentText.ts";
import { openProjectId } from "../../app/session.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { deleteKept, kept, openKept, readKept } from "./searchState.ts";

/** Searches that were made before, with what was asked and what came out. */
export function KeptPanel() {
  useEffect(() => void readKept(), []);
  if (kept.value.length === 0) return <p class="hint">No search has been made in this project yet.</p>;
  return (
    <TableBox label="Earlier searches">
      <table>
        <thead>
          <tr>
            <th scope="col">Search</th>
            <th scope="col">Made</th>
            <th scope="col">Outcome</th>
            <th scope="col">Files</th>
            <th scope="col">
              <span class="visually-hidden">Acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {kept.value.map((entry) => (
            <KeptRow key={entry.id} entry={entry} />
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function KeptRow({ entry }: { readonly entry: ShortlistEntry }) {
  return (
    <tr>
      <th scope="row">
        <button type="button" class="quiet" onClick={() => void openKept(entry.id)}>
          {entry.name}
        </button>
      </th>
      <td>{momentText(entry.madeAt)}</td>
      <td>{entry.answer}</td>
      <td>
        <a href={shortlistFile(openProjectId(), entry.id, "csv")} download>
          CSV
        </a>{" "}
        <a href={shortlistFile(openProjectId(), entry.id, "json")} download>
          JSON
        </a>
      </td>
      <td>
        <button
          type="button"
          class="quiet"
          aria-label={`Delete the search ${entry.name}`}
          onClick={() => deleteKept(entry)}
        >
          Delete
        </button>
      </td>
    </tr>
  );
}

import { noteChoice } from "../../../app/route.ts";
import { counts } from "../../../app/words.ts";
import { openRecording, recordings } from "./liveState.ts";
import { portLinks } from "./portLink.ts";

/** Recordings that have not ended, those that an earlier run of the page left behind included. */
export function LiveList() {
  if (recordings.value.length === 0) return null;
  const open = openRecording.value?.id;
  return (
    <nav class="card bench-runs" aria-label="Recordings">
      <h2>Recordings</h2>
      <ul>
        {recordings.value.map(({ id, document, held }) => (
          <li key={id}>
            <button
              type="button"
              class={id === open ? "bench-run bench-run-open" : "bench-run"}
              aria-current={id === open ? "true" : undefined}
              onClick={() => noteChoice("run", id)}
            >
              <span class="bench-run-name">{document.name}</span>
              <span class="bench-run-facts">{counts(held.lines, "line")}</span>
              <span class="chip">{portLinks.value.get(id)?.state === "reading" ? "reading a port" : "not ended"}</span>
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}

import { cancelSearch, search, shown, startSearch } from "./searchState.ts";
import { boxSize, missing } from "./shortlistState.ts";

/** Starts the search, shows how far it is, and stops it. */
export function SearchBar() {
  const now = search.value;
  return (
    <div class="shortlist-search">
      {now.state === "running" ? (
        <>
          <progress max={1} value={now.fraction} aria-label="Search of the parts" />
          <span role="status">
            {Math.round(100 * now.fraction)}
            {"\u202f"}%
          </span>
          <button type="button" onClick={cancelSearch}>
            Stop the search
          </button>
        </>
      ) : (
        <button type="button" class="primary" disabled={missing.value !== null} onClick={() => void startSearch()}>
          Search the parts
        </button>
      )}
      <span class="hint">
        {missing.value} {boxSize.value}.
        {shown.value !== null && ` Shown: the search of ${shown.value.when}, ${shown.value.took}.`}
      </span>
    </div>
  );
}

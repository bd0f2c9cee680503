import { METHODS, type MethodId } from "./methods.data.ts";
import { showMethod } from "./wantedMethod.ts";

/** Leads from a card to the pages of the models behind its numbers. */
export function MethodLinks({ ids }: { readonly ids: readonly MethodId[] }) {
  return (
    <p class="row method-links">
      <span class="muted">How it is computed:</span>
      {METHODS.filter(({ id }) => ids.includes(id)).map(({ id, name }) => (
        <button key={id} type="button" class="quiet" onClick={() => showMethod(id)}>
          {name}
        </button>
      ))}
    </p>
  );
}

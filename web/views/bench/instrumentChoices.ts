import { type Instrument, InstrumentRole } from "../../../shared/model/instrument.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { CHANNEL_NAMES, lookAt } from "../instruments/instrumentsModel.ts";

/** The choice of an instrument for one channel of a run. */
export interface InstrumentChoice {
  readonly role: InstrumentRole;
  readonly label: string;
  /** Identity of the chosen instrument; empty where none. */
  readonly chosen: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** What the chosen one is worth. */
  readonly sentence: string;
}

/** One choice for each channel that the log has, or that an instrument is chosen for. */
export function instrumentChoices(
  { columns, instrumentIds = {} }: Recipe,
  stored: readonly StoredDocument<Instrument>[],
): InstrumentChoice[] {
  return InstrumentRole.options
    .filter((role) => instrumentIds[role] !== undefined || columns.some((use) => use.role === role))
    .map((role) => {
      const chosen = stored.find(({ id }) => id === instrumentIds[role]);
      const offered = stored.filter(({ document }) => document.role === role);
      return {
        role,
        label: `${CHANNEL_NAMES[role]} measured with`,
        chosen: instrumentIds[role] ?? "",
        options: [
          {
            value: "",
            label: role === "thrust" ? "No instrument: the factor below" : "No instrument",
          },
          ...offered.map(({ id, document }) => ({ value: id, label: document.name })),
          ...(instrumentIds[role] && !chosen
            ? [{ value: instrumentIds[role], label: "An instrument that was deleted" }]
            : []),
        ],
        sentence: chosen ? lookAt(chosen.document).sentence : "",
      };
    });
}

/** The recipe with another instrument behind a channel, or none where `id` is empty. */
export function withInstrument(recipe: Recipe, role: InstrumentRole, id: string): Recipe {
  const { instrumentIds: before = {}, ...others } = recipe;
  const { [role]: _former, ...rest } = before;
  const next = id === "" ? rest : { ...rest, [role]: id };
  return Object.keys(next).length === 0 ? others : { ...others, instrumentIds: next };
}

import type { ReadingChoice } from "../../../shared/model/readingChoice.ts";
import type { ColumnUse } from "../../../shared/model/recipe.ts";

interface ReadingChoicesProps {
  readonly choices: readonly ReadingChoice[];
  readonly uses: readonly ColumnUse[];
  readonly onChoose: (use: ColumnUse) => void;
}

/** Columns that can be in more than one unit: what each would mean, and a button to take it. Nothing is taken unasked. */
export function ReadingChoices({ choices, uses, onChoose }: ReadingChoicesProps) {
  return (
    <>
      {choices.map(({ column, header, role, options, recommended }) => {
        const unit = uses.find((use) => use.column === column && use.role === role)?.unit;
        return (
          <fieldset key={column} class="bench-choices">
            <legend>In which unit is “{header}”?</legend>
            <ul>
              {options.map((option) => (
                <li key={option.unit}>
                  <span class="chip">{option.verdict}</span> {option.sentence}{" "}
                  {option.unit === unit ? (
                    <strong>chosen</strong>
                  ) : (
                    <button type="button" class="quiet" onClick={() => onChoose({ column, role, unit: option.unit })}>
                      Read it in {option.unit}
                      {option.unit === recommended && " (the only possible one)"}
                    </button>
                  )}
                </li>
              ))}
            </ul>
          </fieldset>
        );
      })}
    </>
  );
}

import { useState } from "preact/hooks";
import type { Recipe } from "../../../shared/model/recipe.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { type SpeedSpan, spansOfPlateaus, speedSpanGap, speedSpans, withSpeedSpans } from "./advanceSpeeds.ts";
import { editRecipe, openState } from "./benchState.ts";

/** Speeds that changed during the run: from, to, and the speed between, as they stand in the notebook of the tow. */
export function SpeedSpans({ recipe }: { readonly recipe: Recipe }) {
  const spans = speedSpans(recipe);
  const hasClock = recipe.columns.some(({ role }) => role === "time");
  const set = (label: string, next: readonly SpeedSpan[]) => void editRecipe(label, (now) => withSpeedSpans(now, next));
  return (
    <details class="bench-speed-spans" open={spans.length > 0}>
      <summary>Speeds that changed during the run</summary>
      <p class="hint">A plateau has the speed of the span that its middle lies in; outside all spans it is at rest.</p>
      {spans.length > 0 && (
        <TableBox label="Speeds through the water">
          <table class="bench-speeds">
            <thead>
              <tr>
                <th scope="col">{hasClock ? "From" : "From row"}</th>
                <th scope="col">{hasClock ? "To" : "To row"}</th>
                <th scope="col">Speed</th>
                <th scope="col">
                  <span class="visually-hidden">Remove</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {spans.map((span, at) => (
                <SpanRow
                  key={at}
                  name={`span ${at + 1}`}
                  span={span}
                  hasClock={hasClock}
                  others={spans.toSpliced(at, 1)}
                  onChange={(next) => set(`Changed speed span ${at + 1}`, spans.with(at, next))}
                  onRemove={() => set(`Removed speed span ${at + 1}`, spans.toSpliced(at, 1))}
                />
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
      <NewSpan spans={spans} hasClock={hasClock} onAdd={(span) => set("Added a speed span", [...spans, span])} />
      <FromPlateaus spans={spans} onSpans={(next) => set("Made a speed span of each plateau", next)} />
    </details>
  );
}

const place = (hasClock: boolean) =>
  hasClock ? ({ dimension: "time", unit: "s" } as const) : ({ dimension: "number" } as const);

interface SpanRowProps {
  readonly name: string;
  readonly span: SpeedSpan;
  readonly others: readonly SpeedSpan[];
  readonly hasClock: boolean;
  readonly onChange: (span: SpeedSpan) => void;
  readonly onRemove: () => void;
}

function SpanRow({ name, span, others, hasClock, onChange, onRemove }: SpanRowProps) {
  const cell = (key: keyof SpeedSpan, label: string) => (
    <td>
      <QuantityField
        label={`${label} of ${name}`}
        {...(key === "speed" ? ({ dimension: "speed", unit: "m/s" } as const) : place(hasClock))}
        value={span[key]}
        check={(value) => speedSpanGap(others, { ...span, [key]: value }, hasClock) || null}
        onChange={() => undefined}
        onCommit={(value) => value !== null && value !== span[key] && onChange({ ...span, [key]: value })}
      />
    </td>
  );
  return (
    <tr>
      {cell("start", "Start")}
      {cell("end", "End")}
      {cell("speed", "Speed")}
      <td>
        <button type="button" class="quiet" aria-label={`Remove ${name}`} onClick={onRemove}>
          Remove
        </button>
      </td>
    </tr>
  );
}

interface NewSpanProps {
  readonly spans: readonly SpeedSpan[];
  readonly hasClock: boolean;
  readonly onAdd: (span: SpeedSpan) => void;
}

type Draft = { readonly [K in keyof SpeedSpan]: number | null };

const EMPTY: Draft = { start: null, end: null, speed: null };

function NewSpan({ spans, hasClock, onAdd }: NewSpanProps) {
  const [draft, setDraft] = useState(EMPTY);
  const { start, end, speed } = draft;
  const span = start === null || end === null || speed === null ? null : { start, end, speed };
  const gap = span === null ? "" : speedSpanGap(spans, span, hasClock);
  const field = (key: keyof SpeedSpan, label: string) => (
    <QuantityField
      label={label}
      {...(key === "speed" ? ({ dimension: "speed", unit: "m/s" } as const) : place(hasClock))}
      value={draft[key]}
      optional
      onChange={(value) => setDraft({ ...draft, [key]: value })}
    />
  );
  const add = (event: Event) => {
    event.preventDefault();
    if (span === null || gap !== "") return;
    onAdd(span);
    setDraft(EMPTY);
  };
  return (
    <form class="form-grid bench-new-span" onSubmit={add} noValidate>
      {field("start", hasClock ? "From" : "From row")}
      {field("end", hasClock ? "To" : "To row")}
      {field("speed", "At the speed")}
      <div class="row form-buttons">
        <button type="submit" disabled={span === null || gap !== ""}>
          Add this span
        </button>
        {gap !== "" && <span class="hint">{gap}</span>}
      </div>
    </form>
  );
}

interface FromPlateausProps {
  readonly spans: readonly SpeedSpan[];
  readonly onSpans: (spans: readonly SpeedSpan[]) => void;
}

/** A row for each plateau that was found, so that only the speeds are left to type. */
function FromPlateaus({ spans, onSpans }: FromPlateausProps) {
  const plateaus = openState.value?.reduction?.plateaus ?? [];
  if (spans.length > 0 || plateaus.length === 0) return null;
  return (
    <button type="button" class="quiet" onClick={() => onSpans(spansOfPlateaus(plateaus, 0))}>
      Make a span of each of the {plateaus.length} plateaus, and type the speeds
    </button>
  );
}

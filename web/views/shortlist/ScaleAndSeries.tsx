import { useState } from "preact/hooks";
import type { SeriesWithoutPitch } from "../../../shared/model/seriesPropeller.ts";
import type { SeriesToTry } from "../../../shared/model/shortlist.ts";
import { readLengths, readNumbers } from "../../forms/quantityLists.ts";
import { textOf } from "../../forms/quantityText.ts";
import { TextField } from "../../forms/TextField.tsx";
import { FAMILY_NAMES } from "../theory/series/familyNames.ts";
import { SeriesFields } from "../theory/series/SeriesFields.tsx";
import type { BoxChoices } from "./box.ts";

interface ScaleAndSeriesProps {
  readonly choices: BoxChoices;
  readonly onChange: (some: Partial<BoxChoices>) => void;
}

/** Propellers besides those in hand: scaled ones, and those of a published series. */
export function ScaleAndSeries({ choices, onChange }: ScaleAndSeriesProps) {
  const [text, setText] = useState(choices.scaleTo.map((diameter) => textOf(diameter, "length", "mm")).join(", "));
  const read = readLengths(text);
  return (
    <>
      <div class="form-grid">
        <TextField
          label="Also scaled to these diameters"
          value={text}
          optional
          problem={read.problem}
          help="For example: 70 mm, 90 mm. Same shape; the Reynolds number it works at is told as a doubt."
          onChange={(typed) => {
            setText(typed);
            const lengths = readLengths(typed);
            if (lengths.problem === null) onChange({ scaleTo: lengths.values });
          }}
        />
      </div>
      <ul class="shortlist-series">
        {choices.series.map((one, at) => (
          <li key={seriesText(one)}>
            {seriesText(one)}{" "}
            <button
              type="button"
              class="quiet"
              onClick={() => onChange({ series: choices.series.filter((_other, index) => index !== at) })}
            >
              Take away
            </button>
          </li>
        ))}
      </ul>
      <SeriesAdder onAdd={(series) => onChange({ series: [...choices.series, series] })} />
    </>
  );
}

function seriesText({ series, pitchRatios, diameters }: SeriesToTry): string {
  const name = FAMILY_NAMES[series.family];
  const screw = series.family === "wageningen-b" ? `, ${series.blades} blades, area ratio ${series.areaRatio}` : "";
  const sizes = diameters.map((diameter) => textOf(diameter, "length", "mm")).join(", ");
  return `${name}${screw}: P/D ${pitchRatios.join(", ")}; ${sizes}`;
}

function SeriesAdder({ onAdd }: { readonly onAdd: (series: SeriesToTry) => void }) {
  const [series, setSeries] = useState<SeriesWithoutPitch>({ family: "wageningen-b", blades: 3, areaRatio: 0.5 });
  const [pitches, setPitches] = useState("0.6, 0.8, 1.0, 1.2");
  const [sizes, setSizes] = useState("60 mm, 70 mm, 80 mm");
  const [pitch, size] = [readNumbers(pitches), readLengths(sizes)];
  const ready = pitch.problem === null && size.problem === null && pitch.values.length > 0 && size.values.length > 0;
  return (
    <details>
      <summary>Try propellers of a published series</summary>
      <div class="form-grid">
        <SeriesFields value={series} onChange={setSeries} />
        <TextField label="Pitch ratios" value={pitches} problem={pitch.problem} onChange={setPitches} />
        <TextField label="Diameters" value={sizes} problem={size.problem} onChange={setSizes} />
      </div>
      <p class="hint">What a smooth, well-made propeller of that family would do; a printed one does less.</p>
      <button
        type="button"
        disabled={!ready}
        onClick={() => onAdd({ series, pitchRatios: [...pitch.values], diameters: [...size.values] })}
      >
        Add these propellers to the search
      </button>
    </details>
  );
}

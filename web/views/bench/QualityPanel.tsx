import type { QualityCheck, QualityVerdict } from "../../../shared/model/quality.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import { Fold } from "../../app/Fold.tsx";
import { Icon } from "../../app/Icon.tsx";
import "./quality.css";
import { type QualityRow, qualityCardModel } from "./qualityModel.ts";
import { StandFields } from "./StandFields.tsx";

interface QualityPanelProps {
  readonly quality: readonly QualityCheck[];
  readonly recipe: Recipe;
}

/** Can this run be trusted? Each check with its verdict, and beside them what only a person can state. */
export function QualityPanel({ quality, recipe }: QualityPanelProps) {
  const { sentence, tone, open, fine } = qualityCardModel(quality);
  return (
    <Fold id="bench-quality" title="Can this run be trusted?" class="bench-quality">
      <p class={`quality-answer quality-${tone}`} role="status">
        {sentence}
      </p>
      {open.length > 0 && <Rows rows={open} />}
      {fine.length > 0 && (
        <details open={open.length === 0}>
          <summary>What passed ({fine.length})</summary>
          <Rows rows={fine} />
        </details>
      )}
      <details>
        <summary>What only you can say of the stand</summary>
        <StandFields recipe={recipe} />
      </details>
    </Fold>
  );
}

function Rows({ rows }: { readonly rows: readonly QualityRow[] }) {
  return (
    <ul class="quality-rows">
      {rows.map(({ code, name, verdict, word, sentence, against, mend }) => (
        <li key={code} class={`quality-row quality-${verdict}`}>
          <span class="quality-verdict">
            <Icon path={SIGNS[verdict]} size={18} /> {word}
          </span>
          <div>
            <strong>{name}.</strong> <span>{sentence}</span>
            {mend && <p>{mend}</p>}
            <p class="hint">{against}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}

/** A tick, a raised mark, a ring: told apart without colour. */
const SIGNS: { readonly [V in QualityVerdict]: string } = {
  pass: "M4 13l5 5L20 6",
  flag: "M12 4v10M12 18.5v1",
  unknown: "M12 5a7 7 0 1 0 0 14 7 7 0 0 0 0-14",
};

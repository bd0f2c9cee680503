import type { DragFitData } from "../../../../../shared/model/vehicle/dragFit.ts";
import { chosenBuild } from "../buildState.ts";
import type { DragWay } from "../drag/directions.ts";
import { withAxisAddedMass } from "./addedMassOf.ts";
import { FitResult } from "./FitResult.tsx";
import { keptInWords } from "./fitWords.ts";

interface FittedDragProps {
  readonly data: DragFitData;
  readonly way: DragWay;
  readonly onChange: () => void;
}

/** A drag that was fitted, as the card shows it. */
export function FittedDrag({ data, way, onChange }: FittedDragProps) {
  return (
    <>
      <p class="hint">
        {keptInWords(data)}
        {data.note && `. ${data.note}`}
      </p>
      <FitResult data={withAxisAddedMass(data, chosenBuild.value, way)} />
      <div class="row">
        <button type="button" onClick={onChange}>
          Change this fit or its log
        </button>
      </div>
    </>
  );
}

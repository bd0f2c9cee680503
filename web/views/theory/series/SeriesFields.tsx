import { useRef, useState } from "preact/hooks";
import type { SeriesWithoutPitch } from "../../../../shared/model/seriesPropeller.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { FAMILY_NAMES } from "./familyNames.ts";

type OpenScrew = Extract<SeriesWithoutPitch, { family: "wageningen-b" }>;

interface SeriesFieldsProps {
  readonly value: SeriesWithoutPitch;
  readonly onChange: (series: SeriesWithoutPitch) => void;
  /** Told whenever a field begins or ceases to hold something that can not be read; until then the last value stays. */
  readonly onReadable?: (readable: boolean) => void;
}

const FAMILIES = Object.entries(FAMILY_NAMES).map(([value, label]) => ({
  value: value as SeriesWithoutPitch["family"],
  label,
}));

/** The screw that is shown when the B series is chosen and none of it was before. */
const OPEN: OpenScrew = { family: "wageningen-b", blades: 3, areaRatio: 0.5 };

/** A published series, with blades and area ratio where the series leaves them open. */
export function SeriesFields({ value, onChange, onReadable = () => undefined }: SeriesFieldsProps) {
  const [unread, setUnread] = useState<readonly string[]>([]);
  // Who looks at a nozzle series and comes back finds the open screw of before.
  const open = useRef(OPEN);
  if (value.family === "wageningen-b") open.current = value;
  const mark = (next: readonly string[]) => {
    setUnread(next);
    onReadable(next.length === 0);
  };
  const chooseFamily = (family: SeriesWithoutPitch["family"]) => {
    mark([]);
    onChange(family === "wageningen-b" ? open.current : { family });
  };
  const follow = (field: string) => (problem: string | null) =>
    mark([...unread.filter((one) => one !== field), ...(problem === null ? [] : [field])]);
  return (
    <>
      <SelectField
        label="Series"
        value={value.family}
        options={FAMILIES}
        help="What a smooth, well-made propeller of this family does at a high Reynolds number: a yardstick, not your propeller."
        onChange={chooseFamily}
      />
      {value.family === "wageningen-b" && <OpenScrewFields value={value} onChange={onChange} follow={follow} />}
    </>
  );
}

interface OpenScrewFieldsProps {
  readonly value: OpenScrew;
  readonly onChange: (screw: OpenScrew) => void;
  /** Who is told whether a field of this name can be read. */
  readonly follow: (field: string) => (problem: string | null) => void;
}

function OpenScrewFields({ value, onChange, follow }: OpenScrewFieldsProps) {
  return (
    <>
      <QuantityField
        label="Number of blades"
        symbol="Z"
        dimension="number"
        value={value.blades}
        min={2}
        max={7}
        onChange={(blades) => blades !== null && onChange({ ...value, blades: Math.round(blades) })}
        onProblem={follow("blades")}
      />
      <QuantityField
        label="Expanded area ratio"
        symbol="A_E/A_0"
        dimension="number"
        value={value.areaRatio}
        positive
        max={2}
        help="Tested from 0.30 to 1.05."
        onChange={(areaRatio) => areaRatio !== null && onChange({ ...value, areaRatio })}
        onProblem={follow("area ratio")}
      />
    </>
  );
}

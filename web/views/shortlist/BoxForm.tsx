import { addressOf } from "../../app/route.ts";
import { parts } from "../../app/session.ts";
import { drivePropellers } from "../drive/drivePropellers.ts";
import { KIND_NAMES } from "../parts/partsModel.ts";
import type { BoxChoices, BoxKind } from "./box.ts";
import { ScaleAndSeries } from "./ScaleAndSeries.tsx";
import { boxChoices, boxSize } from "./shortlistState.ts";

const KINDS: readonly BoxKind[] = ["motors", "controllers", "packs", "gears", "tethers"];

const change = (some: Partial<BoxChoices>): void => {
  boxChoices.value = { ...boxChoices.value, ...some };
};

/** Which parts are tried: all that are kept, unless the builder leaves some out. */
export function BoxForm() {
  const { throughTether, directDrive } = boxChoices.value;
  return (
    <>
      <p>{boxSize.value}.</p>
      <div class="shortlist-box">
        {KINDS.map((kind) => (
          <KindChecks key={kind} kind={kind} />
        ))}
        <Checks
          title="Propellers with known coefficients"
          none="none yet: reduce a run on Bench, or try series propellers below"
          items={drivePropellers.value.map(({ propeller: { name } }) => ({ id: name, name }))}
        />
      </div>
      <p class="shortlist-switches">
        <label>
          <input
            type="checkbox"
            checked={directDrive}
            onChange={(event) => change({ directDrive: event.currentTarget.checked })}
          />{" "}
          Also without a gear
        </label>
        <label>
          <input
            type="checkbox"
            checked={throughTether}
            onChange={(event) => change({ throughTether: event.currentTarget.checked })}
          />{" "}
          The packs stay ashore and feed through the tethers
        </label>
      </p>
      <ScaleAndSeries choices={boxChoices.value} onChange={change} />
    </>
  );
}

function KindChecks({ kind }: { readonly kind: BoxKind }) {
  const items = parts.value[kind].map(({ id, document }) => ({ id, name: document.name }));
  if (items.length === 0 && (kind === "gears" || kind === "tethers")) return null;
  return <Checks title={KIND_NAMES[kind].many} none="none kept" items={items} />;
}

interface ChecksProps {
  readonly title: string;
  readonly none: string;
  readonly items: readonly { readonly id: string; readonly name: string }[];
}

function Checks({ title, none, items }: ChecksProps) {
  const { leftOut } = boxChoices.value;
  const set = (id: string, taken: boolean) => {
    const next = new Set(leftOut);
    if (taken) next.delete(id);
    else next.add(id);
    change({ leftOut: next });
  };
  return (
    <fieldset class="shortlist-checks">
      <legend>{title}</legend>
      {items.length === 0 && (
        <p class="hint">
          <a href={addressOf("parts")}>{none}</a>
        </p>
      )}
      {items.map(({ id, name }) => (
        <label key={id}>
          <input
            type="checkbox"
            checked={!leftOut.has(id)}
            onChange={(event) => set(id, event.currentTarget.checked)}
          />{" "}
          {name}
        </label>
      ))}
    </fieldset>
  );
}

import type { Dimension } from "../../../../shared/quantity/units.data.ts";
import type { Allowed } from "../../../forms/quantityText.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { KeptQuantity } from "./KeptQuantity.tsx";
import type { LegKind } from "./missionEdits.ts";

interface LegKindFieldsProps {
  readonly kind: LegKind;
  readonly onKeep: (kind: LegKind) => unknown;
}

/** The numbers of what a leg does. */
export function LegKindFields({ kind, onKeep }: LegKindFieldsProps) {
  switch (kind.does) {
    case "swim":
      return <SwimFields kind={kind} onKeep={onKeep} />;
    case "climb":
      return (
        <>
          <Size
            {...{ label: "Vertical speed", dimension: "speed", unit: "m/s", min: -10, max: 10 }}
            help="Positive up, negative down."
            value={kind.speed}
            check={(speed) => (speed === 0 ? "0 m/s never arrives. Needed: a speed up or down." : null)}
            onKeep={(speed) => onKeep({ ...kind, speed })}
          />
          <Size
            {...{ label: "Change of depth", dimension: "length", unit: "m", positive: true, max: 12_000 }}
            value={kind.distance}
            onKeep={(distance) => onKeep({ ...kind, distance })}
          />
        </>
      );
    case "push":
      return (
        <>
          <Size
            {...{ label: "Force ahead", dimension: "massAsForce", unit: "N", positive: true, max: 1e5 }}
            value={kind.force}
            onKeep={(force) => onKeep({ ...kind, force })}
          />
          <Duration value={kind.duration} onKeep={(duration) => onKeep({ ...kind, duration })} />
        </>
      );
    case "hold":
    case "rest":
      return <Duration value={kind.duration} onKeep={(duration) => onKeep({ ...kind, duration })} />;
  }
}

interface SwimFieldsProps {
  readonly kind: Extract<LegKind, { does: "swim" }>;
  readonly onKeep: (kind: LegKind) => unknown;
}

function SwimFields({ kind, onKeep }: SwimFieldsProps) {
  const { extent, speed } = kind;
  return (
    <>
      <Size
        {...{ label: "Speed through the water", dimension: "speed", unit: "m/s", positive: true, max: 20 }}
        value={speed}
        onKeep={(next) => onKeep({ ...kind, speed: next })}
      />
      <SelectField
        label="For"
        value={extent.by}
        options={[
          { value: "duration", label: "a time" },
          { value: "distance", label: "a distance over the ground" },
        ]}
        onChange={(by) =>
          onKeep({
            ...kind,
            extent:
              by === "duration"
                ? { by, duration: extent.by === "duration" ? extent.duration : extent.distance / speed }
                : { by, distance: extent.by === "distance" ? extent.distance : extent.duration * speed },
          })
        }
      />
      {extent.by === "duration" ? (
        <Duration
          value={extent.duration}
          onKeep={(duration) => onKeep({ ...kind, extent: { by: "duration", duration } })}
        />
      ) : (
        <Size
          {...{ label: "Distance", dimension: "length", unit: "m", positive: true, max: 1e6 }}
          value={extent.distance}
          onKeep={(distance) => onKeep({ ...kind, extent: { by: "distance", distance } })}
        />
      )}
    </>
  );
}

interface SizeProps extends Allowed {
  readonly label: string;
  readonly dimension: Dimension;
  readonly unit: string;
  readonly help?: string;
  readonly value: number;
  readonly onKeep: (si: number) => unknown;
}

function Size({ onKeep, ...field }: SizeProps) {
  return <KeptQuantity {...field} onKeep={(si) => si !== null && onKeep(si)} />;
}

function Duration(props: Pick<SizeProps, "value" | "onKeep">) {
  return <Size {...{ label: "How long", dimension: "time", unit: "min", positive: true, max: 1e7 }} {...props} />;
}

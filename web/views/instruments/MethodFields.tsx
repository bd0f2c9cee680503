import type { MethodKind } from "../../../shared/model/instrument.ts";
import type { Dimension } from "../../../shared/quantity/units.data.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { TextField } from "../../forms/TextField.tsx";
import { type InstrumentDraft, pasted } from "./instrumentDraft.ts";
import { PointsTable } from "./PointsTable.tsx";

interface MethodFieldsProps {
  readonly draft: InstrumentDraft;
  readonly onChange: (change: Partial<InstrumentDraft>) => void;
}

/** The raw data of the chosen method. */
export function MethodFields(props: MethodFieldsProps) {
  const Fields = FIELDS[props.draft.kind];
  return <Fields {...props} />;
}

const FIELDS: { readonly [K in MethodKind]: (props: MethodFieldsProps) => preact.JSX.Element } = {
  deadWeights: DeadWeights,
  comparison: Comparison,
  lever: (props) => (
    <>
      <Arms {...props} />
      <ScaleTolerance {...props} />
    </>
  ),
  torqueArm: (props) => (
    <>
      <Unit {...props} of="readingUnit" label="Unit of the force in the log" />
      <ArmOfTorque {...props} />
      <ScaleTolerance {...props} />
    </>
  ),
  reference: Reference,
  divider: Divider,
  markers: ({ draft, onChange }) => (
    <QuantityField
      label="Pulses in one turn"
      dimension="number"
      positive
      value={draft.pulsesPerTurn}
      help="Blades that pass the sensor, or markers on the shaft: a tachometer that counts three blades reads three times the rate."
      onChange={(pulsesPerTurn) => onChange({ pulsesPerTurn })}
    />
  ),
};

type NumberKey = {
  [K in keyof InstrumentDraft]: InstrumentDraft[K] extends number | null ? K : never;
}[keyof InstrumentDraft];

interface NumberProps extends MethodFieldsProps {
  readonly of: NumberKey;
  readonly label: string;
  readonly dimension: Dimension;
  readonly unit?: string;
  readonly help?: string;
  readonly optional?: boolean;
  readonly min?: number;
  readonly max?: number;
}

function Quantity({ draft, onChange, of, label, dimension, unit, help, optional, min = 0, max }: NumberProps) {
  return (
    <QuantityField
      {...{ label, dimension, unit, help, optional }}
      min={min}
      {...(max !== undefined && { max })}
      value={draft[of]}
      onChange={(value) => onChange({ [of]: value })}
    />
  );
}

/** A tolerance in per cent, as makers state it. */
function Tolerance(props: Omit<NumberProps, "dimension">) {
  return <Quantity {...props} dimension="fraction" unit="%" optional max={0.5} />;
}

function Unit({
  draft,
  onChange,
  of,
  label,
  help,
}: Omit<NumberProps, "of" | "dimension"> & { of: "appliedUnit" | "readingUnit" }) {
  return (
    <TextField
      label={label}
      value={draft[of]}
      maxLength={20}
      help={help}
      onChange={(text) => onChange({ [of]: text.trim() })}
    />
  );
}

function Length({
  of,
  tolerance,
  label,
  ...props
}: MethodFieldsProps & { of: NumberKey; tolerance: NumberKey; label: string }) {
  return (
    <>
      <Quantity {...props} of={of} label={label} dimension="length" unit="mm" />
      <Quantity {...props} of={tolerance} label={`${label}: within ±`} dimension="length" unit="mm" optional />
    </>
  );
}

function Arms(props: MethodFieldsProps) {
  return (
    <>
      <Length {...props} of="scaleArm" tolerance="scaleArmTolerance" label="Pivot to scale" />
      <Length {...props} of="propellerArm" tolerance="propellerArmTolerance" label="Pivot to propeller" />
    </>
  );
}

const ArmOfTorque = (props: MethodFieldsProps) => (
  <Length {...props} of="arm" tolerance="armTolerance" label="Shaft to line of force" />
);
const ScaleTolerance = (props: MethodFieldsProps) => (
  <Quantity {...props} of="readingTolerance" label="Scale: within ±" dimension="fraction" unit="%" optional max={0.5} />
);

function Table({ draft, onChange }: MethodFieldsProps) {
  const paste = (text: string) => {
    const table = pasted(text);
    if (table) onChange(table);
    return table !== null;
  };
  return (
    <div class="instrument-table">
      <p class="hint">
        Type the points in the order they were taken, up and down again, or paste two columns into any cell; a header
        with units is read. Write what pulls against the thrust as negative.
      </p>
      <PointsTable
        rows={draft.rows}
        appliedUnit={draft.appliedUnit}
        readingUnit={draft.readingUnit}
        onRows={(rows) => onChange({ rows })}
        onPaste={paste}
      />
    </div>
  );
}

const READING_UNIT = "As the logger writes it: gf, N, counts, mV. The same numbers must stand in the log.";

const Step = (props: MethodFieldsProps) => (
  <Quantity
    {...props}
    of="resolution"
    label="Smallest step of the reading"
    dimension="number"
    optional
    help="In the unit of the readings. Empty: as the digits show."
  />
);

function DeadWeights(props: MethodFieldsProps) {
  const { draft, onChange } = props;
  return (
    <>
      {draft.role === "thrust" && (
        <SelectField
          label="Where the weights pulled"
          value={draft.hungAt}
          options={[
            { value: "propeller", label: "Where the propeller pulls, over a pulley" },
            { value: "scale", label: "On the scale itself; the arms are given" },
          ]}
          onChange={(hungAt) => onChange({ hungAt })}
        />
      )}
      <Unit {...props} of="appliedUnit" label="Unit of the weights" />
      <Unit {...props} of="readingUnit" label="Unit of the readings" help={READING_UNIT} />
      <Step {...props} />
      <Tolerance {...props} of="appliedTolerance" label="Weights: within ±" />
      {draft.role === "thrust" && draft.hungAt === "scale" && <Arms {...props} />}
      {draft.role === "torque" && <ArmOfTorque {...props} />}
      <Quantity
        {...props}
        of="gravity"
        label="Gravity where you are, m/s²"
        dimension="number"
        min={9.7}
        max={9.9}
        help="9.78 at the equator, 9.81 at 45°, 9.83 at the poles. The standard value 9.80665 counts as known to 0.13 %."
      />
      <Table {...props} />
    </>
  );
}

function Comparison(props: MethodFieldsProps) {
  return (
    <>
      <Unit {...props} of="appliedUnit" label="Unit of the reference meter" />
      <Unit {...props} of="readingUnit" label="Unit of the readings" help={READING_UNIT} />
      <Step {...props} />
      <Tolerance {...props} of="appliedTolerance" label="Meter: within ±" />
      <Table {...props} />
    </>
  );
}

function Reference(props: MethodFieldsProps) {
  const { draft, onChange } = props;
  const set = (change: Partial<InstrumentDraft["reference"]>) =>
    onChange({ reference: { ...draft.reference, ...change } });
  return (
    <>
      <Unit {...props} of="appliedUnit" label="Unit of both readings" />
      <TextField label="Meter read" value={draft.reference.applied} onChange={(applied) => set({ applied })} />
      <TextField
        label="Log read at the same time"
        value={draft.reference.reading}
        onChange={(reading) => set({ reading })}
      />
      <Tolerance {...props} of="appliedTolerance" label="Meter: within ±" />
    </>
  );
}

function Divider(props: MethodFieldsProps) {
  return (
    <>
      <Quantity {...props} of="upperResistance" label="Resistor from supply to tap" dimension="resistance" unit="kΩ" />
      <Quantity {...props} of="lowerResistance" label="Resistor from tap to ground" dimension="resistance" unit="kΩ" />
      <Tolerance {...props} of="resistorTolerance" label="Resistors: within ±" />
    </>
  );
}

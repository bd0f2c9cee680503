import { QuantityField } from "../../../../forms/QuantityField.tsx";
import { SelectField } from "../../../../forms/SelectField.tsx";
import { TextField } from "../../../../forms/TextField.tsx";
import type { FitAsked, FitMethod } from "./fitDraft.ts";
import { METHOD_WORDS } from "./fitWords.ts";

interface FitFieldsProps {
  readonly asked: FitAsked;
  readonly set: (change: Partial<FitAsked>) => void;
  readonly canChangeMethod: boolean;
  /** The table has a clock, so that a stretch of it can be chosen. */
  readonly hasTime: boolean;
}

const METHODS = (Object.keys(METHOD_WORDS) as FitMethod[]).map((value) => ({
  value,
  label: METHOD_WORDS[value].label,
}));

/** What was done, and what the log does not hold. */
export function FitFields({ asked, set, canChangeMethod, hasTime }: FitFieldsProps) {
  const { method, by } = asked;
  return (
    <div class="form-grid">
      <SelectField
        label="What was done"
        value={method}
        options={canChangeMethod ? METHODS : METHODS.filter(({ value }) => value === method)}
        onChange={(next) => set({ method: next, stated: [] })}
      />
      {(method === "coastDown" || method === "timedRuns") && (
        <SelectField
          label={method === "coastDown" ? "Logged over time" : "Each run states"}
          value={by}
          options={[
            { value: "speed", label: "speed" },
            { value: "distance", label: method === "coastDown" ? "distance" : "distance and time" },
          ]}
          onChange={(next) => set({ by: next, stated: [] })}
        />
      )}
      {(method === "tow" || method === "coastDown") && (
        <SelectField
          label="Law of the drag"
          value={asked.hasLinear ? "linear" : "square"}
          options={[
            { value: "square", label: "grows with the square of the speed" },
            { value: "linear", label: "with a part that grows with the speed alone" },
          ]}
          onChange={(law) => set({ hasLinear: law === "linear" })}
        />
      )}
      {method === "coastDown" && <MassFields asked={asked} set={set} />}
      {method === "timedRuns" && <WayOfRuns asked={asked} set={set} />}
      {method === "terminal" && <DiveFields asked={asked} set={set} />}
      {(method === "coastDown" || (method === "tow" && hasTime)) && <StretchFields asked={asked} set={set} />}
      <DoubtFields asked={asked} set={set} />
      <TextField label="Note" optional value={asked.note} maxLength={4000} onChange={(note) => set({ note })} />
    </div>
  );
}

type Fields = Pick<FitFieldsProps, "asked" | "set">;

function WayOfRuns({ asked, set }: Fields) {
  return (
    <SelectField
      label="The runs go"
      value={asked.alternates ? "turns" : "one"}
      options={[
        { value: "one", label: "one way, or in still water" },
        { value: "turns", label: "there and back in turn, row by row" },
      ]}
      help="There and back takes a current out."
      onChange={(way) => set({ alternates: way === "turns" })}
    />
  );
}

function MassFields({ asked, set }: Fields) {
  return (
    <>
      <QuantityField
        {...{ label: "Mass with the water it encloses", symbol: "m", dimension: "mass", unit: "kg", positive: true }}
        value={asked.mass}
        help="Added mass is that of the axis, as the card says."
        onChange={(mass) => mass !== null && set({ mass })}
      />
      <QuantityField
        {...{ label: "give or take", dimension: "mass", unit: "kg", min: 0 }}
        value={asked.massDoubt}
        onChange={(massDoubt) => massDoubt !== null && set({ massDoubt })}
      />
    </>
  );
}

function DiveFields({ asked, set }: Fields) {
  return (
    <>
      <QuantityField
        {...{ label: "Net weight on this run", symbol: "W", dimension: "massAsForce", unit: "N", optional: true }}
        value={asked.netWeight}
        help="Weight less buoyancy: positive sinks, negative climbs."
        check={(weight) => (weight === 0 ? "0 N neither sinks nor climbs." : null)}
        onChange={(netWeight) => set({ netWeight })}
      />
      <QuantityField
        {...{ label: "Steady from", dimension: "time", unit: "s", optional: true }}
        value={asked.steadyFrom}
        help="Time of the log from which it no longer gains speed. Left empty, all of it."
        onChange={(steadyFrom) => set({ steadyFrom })}
      />
    </>
  );
}

function StretchFields({ asked, set }: Fields) {
  return (
    <>
      <QuantityField
        {...{ label: "Only rows from", dimension: "time", unit: "s", optional: true }}
        value={asked.from}
        help={asked.method === "coastDown" ? "Thrusters are off from here on." : "Left empty, all of the log."}
        onChange={(from) => set({ from })}
      />
      <QuantityField
        {...{ label: "Only rows up to", dimension: "time", unit: "s", optional: true }}
        value={asked.to}
        onChange={(to) => set({ to })}
      />
    </>
  );
}

function DoubtFields({ asked: { method, doubts }, set }: Fields) {
  const [first, second] = METHOD_WORDS[method].doubts;
  const field = (label: string, at: 0 | 1) => (
    <QuantityField
      key={label}
      {...{ label, dimension: "fraction", unit: "%", min: 0, max: 1 }}
      value={doubts[at]}
      help="Standard uncertainty that all readings share: a scale, a course."
      onChange={(share) => share !== null && set({ doubts: at === 0 ? [share, doubts[1]] : [doubts[0], share] })}
    />
  );
  return (
    <>
      {field(first, 0)}
      {second !== null && field(second, 1)}
    </>
  );
}

import type { DrivePropeller } from "../../../../shared/model/drivePropeller.ts";
import type { DriveChoice, VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { isReducing } from "../../../app/reductions.ts";
import { addressOf } from "../../../app/route.ts";
import { parts } from "../../../app/session.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { asternEstimate } from "../../drive/asternShare.ts";
import { drivePropellers } from "../../drive/drivePropellers.ts";
import { nameGap, without } from "./buildModel.ts";
import { chosenBuild, editBuild } from "./buildState.ts";
import { usersOf, withDrive, withDriveAdded, withoutDrive } from "./driveEdits.ts";
import { KeptQuantity } from "./KeptQuantity.tsx";
import { KeptText } from "./KeptText.tsx";
import { NONE, partChoices } from "./partChoices.ts";
import { TypedPropellerFields } from "./TypedPropellerFields.tsx";

/** What turns the propellers: each kind of thruster once. */
export function DrivesCard() {
  const build = chosenBuild.value;
  if (build === null) return null;
  return (
    <>
      {build.drives.map((drive, at) => (
        <DriveFields key={at} build={build} drive={drive} at={at} />
      ))}
      <div class="row">
        <button type="button" onClick={() => void editBuild(withDriveAdded, "one drive more")}>
          Add a drive
        </button>
      </div>
    </>
  );
}

interface DriveFieldsProps {
  readonly build: VehicleBuild;
  readonly drive: DriveChoice;
  readonly at: number;
}

function DriveFields({ build, drive, at }: DriveFieldsProps) {
  const users = usersOf(build, at);
  const keep = (change: (now: DriveChoice) => DriveChoice, what: string) =>
    editBuild((now) => withDrive(now, at, change), `${what} of ${drive.name}`);
  const others = build.drives.filter((_, n) => n !== at).map(({ name }) => name);
  return (
    <fieldset class="build-group">
      <legend>{drive.name}</legend>
      <p class="hint">{users.length === 0 ? "No thruster has it yet." : `In ${users.join(", ")}.`}</p>
      <div class="form-grid">
        <KeptText
          label="Name"
          value={drive.name}
          maxLength={120}
          gap={(name) => nameGap(name, others)}
          onKeep={(name) => keep((now) => ({ ...now, name }), "name")}
        />
        <PartFields drive={drive} keep={keep} />
        <PropellerField drive={drive} keep={keep} />
        <AsternField drive={drive} keep={keep} />
      </div>
      {drive.propeller.from === "typed" && (
        <TypedPropellerFields
          propeller={drive.propeller.propeller}
          onKeep={(propeller) => keep((now) => ({ ...now, propeller: { from: "typed", propeller } }), "propeller")}
        />
      )}
      {build.drives.length > 1 && (
        <button
          type="button"
          class="quiet"
          disabled={users.length > 0}
          title={users.length > 0 ? "Give its thrusters another drive first" : undefined}
          onClick={() => void editBuild((now) => withoutDrive(now, at), `without ${drive.name}`)}
        >
          Remove {drive.name}
        </button>
      )}
    </fieldset>
  );
}

interface KeepProps {
  readonly drive: DriveChoice;
  readonly keep: (change: (now: DriveChoice) => DriveChoice, what: string) => unknown;
}

function PartFields({ drive, keep }: KeepProps) {
  const { motors, controllers, gears } = parts.value;
  const setOptional = (key: "controllerId" | "gearId", id: string) => (now: DriveChoice) =>
    id === NONE ? (without(now, key) as DriveChoice) : { ...now, [key]: id };
  return (
    <>
      <SelectField
        label="Motor"
        value={drive.motorId}
        options={partChoices(motors, drive.motorId)}
        onChange={(motorId) => keep((now) => ({ ...now, motorId }), "motor")}
      />
      <SelectField
        label="Controller"
        value={drive.controllerId ?? NONE}
        options={partChoices(controllers, drive.controllerId, "None: no resistance, no limit")}
        onChange={(id) => keep(setOptional("controllerId", id), "controller")}
      />
      <SelectField
        label="Gear"
        value={drive.gearId ?? NONE}
        options={partChoices(gears, drive.gearId, "None: propeller on the motor shaft")}
        onChange={(id) => keep(setOptional("gearId", id), "gear")}
      />
    </>
  );
}

/** A typed propeller to begin with: what a plain three-blader of pitch ratio 1 does at rest. From memory. */
const EXAMPLE: DrivePropeller = {
  ...{ name: "Example, to be replaced", source: "typed", nozzle: false },
  from: "an example: what a plain three-blader of pitch ratio 1 does at rest",
  diameter: { value: 0.08, standardUncertainty: 0 },
  ahead: {
    thrustCoefficient: { value: 0.4, standardUncertainty: 0.02 },
    torqueCoefficient: { value: 0.055, standardUncertainty: 0.003 },
    correlation: 0,
  },
};
const TYPED = "typed:";
const NAMED = "named:";

function PropellerField({ drive: { propeller }, keep }: KeepProps) {
  const known = drivePropellers.value.map(({ name }) => name);
  const named = propeller.from === "named" ? propeller.name : null;
  const gone = named !== null && !known.includes(named);
  const options = [
    ...(gone
      ? [{ value: NAMED + named, label: isReducing.value ? `${named} (being worked out)` : `${named} (not known now)` }]
      : []),
    ...known.map((name) => ({ value: NAMED + name, label: name })),
    {
      value: TYPED,
      label: propeller.from === "typed" ? `typed: ${propeller.propeller.name}` : "coefficients typed here",
    },
  ];
  const choose = (value: string) => {
    if (value === TYPED && propeller.from === "typed") return undefined;
    const choice: DriveChoice["propeller"] =
      value === TYPED
        ? { from: "typed", propeller: startOf(named) }
        : { from: "named", name: value.slice(NAMED.length) };
    return keep((now) => ({ ...now, propeller: choice }), "propeller");
  };
  return (
    <SelectField
      label="Propeller"
      value={named === null ? TYPED : NAMED + named}
      options={options}
      help="Measured variants, series among the predictions, or typed."
      problem={
        gone && !isReducing.value
          ? "No variant and no series prediction has this name. Choose another, or reduce its runs."
          : null
      }
      onChange={choose}
    />
  );
}

/** What is typed begins where the propeller before it stood. */
function startOf(named: string | null): DrivePropeller {
  const before = drivePropellers.value.find(({ name }) => name === named)?.propeller;
  return before === undefined
    ? EXAMPLE
    : { ...before, source: "typed", from: `typed, begun from ${before.name}`.slice(0, 300) };
}

function AsternField({ drive: { asternEstimate: now }, keep }: KeepProps) {
  return (
    <KeptQuantity
      label="Astern, where nothing was measured"
      dimension="fraction"
      unit="%"
      value={now?.thrustShare ?? null}
      positive
      max={1}
      optional
      help="Share of the coefficients ahead, a guess known to 20 %. Left empty, such a propeller pushes ahead only."
      onKeep={(share) =>
        keep(
          (drive) =>
            share === null
              ? (without(drive, "asternEstimate") as DriveChoice)
              : { ...drive, asternEstimate: asternEstimate(share) },
          "astern estimate",
        )
      }
    />
  );
}

/** Where there is nothing to choose from. */
export function PartsHint() {
  const { motors, packs } = parts.value;
  if (motors.length > 0 && packs.length > 0) return null;
  return (
    <p class="hint">
      A vehicle needs a motor and a pack. <a href={addressOf("parts")}>Add them under Parts.</a>
    </p>
  );
}

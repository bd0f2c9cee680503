import type { Mission, MissionLeg } from "../../../../shared/model/vehicle/mission.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { formatNumber } from "../../../../shared/quantity/format.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { without } from "./buildModel.ts";
import { chosenBuild, editBuild } from "./buildState.ts";
import { KeptQuantity } from "./KeptQuantity.tsx";
import { KeptText } from "./KeptText.tsx";
import { LegKindFields } from "./LegKindFields.tsx";
import {
  DOES_WORDS,
  type Does,
  LONGEST_MISSION,
  legTime,
  withDoes,
  withLeg,
  withLegAdded,
  withLegMoved,
  withMission,
  withoutLeg,
  withoutMission,
} from "./missionEdits.ts";

/** What the vehicle does on one charge, leg by leg. */
export function MissionCard() {
  const build = chosenBuild.value;
  if (build === null) return null;
  const { mission } = build;
  if (mission === undefined) {
    return (
      <>
        <p class="hint">No mission is described. With one, time and energy of each leg are worked out.</p>
        <button type="button" onClick={() => void editBuild(withMission, "a mission")}>
          Describe a mission
        </button>
      </>
    );
  }
  return (
    <>
      <p>{lengthInWords(mission)}</p>
      <p class="hint">Legs begin as examples: put your own speeds, times and ways in their place.</p>
      {mission.legs.map((leg, at) => (
        <LegFields key={at} leg={leg} at={at} last={mission.legs.length - 1} />
      ))}
      <div class="row">
        <button
          type="button"
          disabled={mission.legs.length >= LONGEST_MISSION}
          onClick={() => void editBuild(withLegAdded, "one leg more")}
        >
          Add a leg
        </button>
        <button type="button" class="quiet" onClick={() => void editBuild(withoutMission, "without mission")}>
          Take the mission away
        </button>
      </div>
      <MissionState mission={mission} />
    </>
  );
}

/** "4 legs, 41 min and the time of legs that are given by distance." */
function lengthInWords({ legs }: Mission): string {
  const times = legs.map((leg) => ({ time: legTime(leg), repeats: leg.repeats }));
  const known = times.reduce((sum, { time, repeats }) => sum + repeats * (time ?? 0), 0);
  const open = times.some(({ time }) => time === null);
  const count = `${legs.length} ${legs.length === 1 ? "leg" : "legs"}`;
  return `${count}, ${formatNumber(known / 60)} min${open ? " and the time of the legs that are given by distance" : ""}.`;
}

function MissionState({ mission }: { readonly mission: Mission }) {
  const set = (change: (now: Mission) => Mission, what: string) =>
    editBuild((now) => (now.mission ? { ...now, mission: change(now.mission) } : now), what);
  return (
    <div class="form-grid">
      <KeptQuantity
        label="Charge that must be left at the end"
        symbol="r"
        dimension="fraction"
        unit="%"
        value={mission.reserve}
        min={0}
        max={0.9}
        onKeep={(reserve) => reserve !== null && set((now) => ({ ...now, reserve }), "reserve")}
      />
      <KeptQuantity
        label="Temperature of the pack on the mission"
        dimension="temperature"
        unit="°C"
        value={mission.packTemperature ?? null}
        min={233}
        max={343}
        optional
        help="Left empty, as the supply says."
        onKeep={(kelvin) =>
          set(
            (now) =>
              kelvin === null ? (without(now, "packTemperature") as Mission) : { ...now, packTemperature: kelvin },
            "temperature",
          )
        }
      />
    </div>
  );
}

interface LegFieldsProps {
  readonly leg: MissionLeg;
  readonly at: number;
  readonly last: number;
}

function LegFields({ leg, at, last }: LegFieldsProps) {
  const keep = (change: (now: MissionLeg) => MissionLeg) => editBuild((now) => withLeg(now, at, change), leg.name);
  return (
    <fieldset class="build-group">
      <legend>
        {at + 1}. {leg.name}
      </legend>
      <div class="form-grid build-tight">
        <KeptText
          label="Name"
          value={leg.name}
          maxLength={120}
          gap={(name) => (name.trim() === "" ? "Needed: a name." : "")}
          onKeep={(name) => keep((now) => ({ ...now, name }))}
        />
        <SelectField
          label="The vehicle shall"
          value={leg.kind.does}
          options={(Object.keys(DOES_WORDS) as Does[]).map((value) => ({ value, label: DOES_WORDS[value] }))}
          onChange={(does) => keep((now) => withDoes(now, does))}
        />
        <LegKindFields kind={leg.kind} onKeep={(kind) => keep((now) => ({ ...now, kind }))} />
        <KeptQuantity
          label="How often"
          dimension="number"
          value={leg.repeats}
          min={1}
          max={10_000}
          onKeep={(repeats) => repeats !== null && keep((now) => ({ ...now, repeats: Math.round(repeats) }))}
        />
      </div>
      <details open={leg.hotelPower !== undefined || leg.current !== undefined}>
        <summary>Another load or current on this leg</summary>
        <div class="form-grid">
          <LegState leg={leg} keep={keep} />
        </div>
      </details>
      <LegButtons {...{ leg, at, last }} />
    </fieldset>
  );
}

function LegButtons({ leg, at, last }: LegFieldsProps) {
  const edit = (change: (build: VehicleBuild) => VehicleBuild) => void editBuild(change, leg.name);
  return (
    <div class="row">
      <button
        type="button"
        class="quiet"
        disabled={at === 0}
        aria-label={`Move ${leg.name} earlier`}
        onClick={() => edit((now) => withLegMoved(now, at, -1))}
      >
        Earlier
      </button>
      <button
        type="button"
        class="quiet"
        disabled={at === last}
        aria-label={`Move ${leg.name} later`}
        onClick={() => edit((now) => withLegMoved(now, at, 1))}
      >
        Later
      </button>
      <button
        type="button"
        class="quiet"
        aria-label={`Remove ${leg.name}`}
        onClick={() => edit((now) => withoutLeg(now, at))}
      >
        Remove
      </button>
    </div>
  );
}

interface LegStateProps {
  readonly leg: MissionLeg;
  readonly keep: (change: (now: MissionLeg) => MissionLeg) => unknown;
}

/** What is different from the vehicle and the scenario meanwhile. */
function LegState({ leg, keep }: LegStateProps) {
  const set = (key: "hotelPower" | "current") => (si: number | null) =>
    keep((now) => (si === null ? (without(now, key) as MissionLeg) : { ...now, [key]: si }));
  return (
    <>
      <KeptQuantity
        label="Hotel load on this leg"
        dimension="power"
        unit="W"
        value={leg.hotelPower ?? null}
        min={0}
        optional
        help="Left empty, that of the vehicle."
        onKeep={set("hotelPower")}
      />
      <KeptQuantity
        label="Current against it on this leg"
        dimension="speed"
        unit="m/s"
        value={leg.current ?? null}
        min={-10}
        max={10}
        optional
        help="Left empty, that of the scenario."
        onKeep={set("current")}
      />
    </>
  );
}

import { signal } from "@preact/signals";
import type { PlacedThruster } from "../../../../../shared/model/vehicle/vehicle.ts";
import type { VehicleBuild } from "../../../../../shared/model/vehicle/vehicleBuild.ts";
import { Caution } from "../../../../app/Caution.tsx";
import { TableBox } from "../../../../app/TableBox.tsx";
import { SelectField } from "../../../../forms/SelectField.tsx";
import { LayoutPicture } from "../../layout/LayoutPicture.tsx";
import { MOST_THRUSTERS, nameGap } from "../buildModel.ts";
import { chosenBuild, editBuild } from "../buildState.ts";
import { anglesOf, directionOf, pushInWords } from "./direction.ts";
import { NameCell } from "./NameCell.tsx";
import { NumberCell } from "./NumberCell.tsx";
import {
  isItsOwnMirror,
  withoutThruster,
  withThruster,
  withThrusterAdded,
  withThrusterMirrored,
} from "./thrusterEdits.ts";

/** How directions are written; both say the same. */
const directionAs = signal<"angles" | "parts">("angles");

/** Where each thruster sits, which way it pushes and turns, and what drives it. */
export function ThrustersCard() {
  const build = chosenBuild.value;
  if (build === null) return null;
  return (
    <>
      <LayoutPicture thrusters={build.thrusters} />
      <p class="hint">
        Places of the propellers from any fixed point of the vehicle, best its centre of mass: x ahead, y to starboard,
        z down. A bare number is in the unit of its column; “12 cm” works too.
      </p>
      <div class="build-one">
        <SelectField
          label="Directions are written as"
          value={directionAs.value}
          options={[
            { value: "angles", label: "angles: heading from the bow, dip below level" },
            { value: "parts", label: "three parts: ahead, to starboard, down" },
          ]}
          onChange={(way) => {
            directionAs.value = way;
          }}
        />
      </div>
      <ThrusterTable build={build} />
      <div class="row">
        <button
          type="button"
          disabled={build.thrusters.length >= MOST_THRUSTERS}
          onClick={() => void editBuild(withThrusterAdded, "one thruster more")}
        >
          Add a thruster
        </button>
      </div>
      <p class="hint">
        Clockwise and anticlockwise: sense of rotation at forward thrust, seen from behind, looking along the push.
      </p>
      <Caution about="drive" />
    </>
  );
}

function ThrusterTable({ build }: { readonly build: VehicleBuild }) {
  const byAngles = directionAs.value === "angles";
  const heads = byAngles ? ["Heading, °", "Dip, °"] : ["Ahead", "To starboard", "Down"];
  return (
    <TableBox label="Thrusters: places, directions, senses of rotation, drives">
      <table class="build-table">
        <thead>
          <tr>
            {["Thruster", "x, mm", "y, mm", "z, mm", ...heads, "Pushes", "Turns", "Drive"].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            <th scope="col">
              <span class="visually-hidden">Acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {build.thrusters.map((thruster, at) => (
            <ThrusterRow key={at} build={build} thruster={thruster} at={at} />
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

interface RowProps {
  readonly build: VehicleBuild;
  readonly thruster: PlacedThruster;
  readonly at: number;
}

function ThrusterRow({ build, thruster, at }: RowProps) {
  const { name, position, direction } = thruster;
  const keep = (change: Partial<PlacedThruster>, what: string) =>
    editBuild((now) => withThruster(now, at, change), `${what} of ${name}`);
  const others = build.thrusters.filter((_, n) => n !== at).map((one) => one.name);
  return (
    <tr>
      <NameCell
        label={`Name of thruster ${at + 1}`}
        value={name}
        gap={(next) => nameGap(next, others)}
        onKeep={(next) => keep({ name: next }, "name")}
      />
      {(["x", "y", "z"] as const).map((axis) => (
        <NumberCell
          key={axis}
          {...{ label: `${axis} of ${name}, mm`, dimension: "length", unit: "mm", min: -100, max: 100 }}
          value={position[axis]}
          onKeep={(si) => keep({ position: { ...position, [axis]: si } }, axis)}
        />
      ))}
      {directionAs.value === "angles" ? (
        <AngleCells thruster={thruster} keep={keep} />
      ) : (
        <PartCells thruster={thruster} keep={keep} />
      )}
      <td class="build-push">{pushInWords(direction)}</td>
      <ChoiceCells build={build} thruster={thruster} keep={keep} />
      <ActsCell build={build} thruster={thruster} at={at} />
    </tr>
  );
}

function ActsCell({ build, thruster, at }: RowProps) {
  const { name } = thruster;
  return (
    <td class="build-acts">
      <button
        type="button"
        class="quiet"
        disabled={isItsOwnMirror(thruster) || build.thrusters.length >= MOST_THRUSTERS}
        aria-label={`Mirror ${name} to the other side`}
        onClick={() => void editBuild((now) => withThrusterMirrored(now, at), `mirror image of ${name}`)}
      >
        Mirror
      </button>
      <button
        type="button"
        class="quiet"
        disabled={build.thrusters.length < 2}
        aria-label={`Remove ${name}`}
        onClick={() => void editBuild((now) => withoutThruster(now, at), `without ${name}`)}
      >
        Remove
      </button>
    </td>
  );
}

interface CellsProps {
  readonly thruster: PlacedThruster;
  readonly keep: (change: Partial<PlacedThruster>, what: string) => unknown;
}

const ANGLE = { dimension: "angle", unit: "°", max: 2 * Math.PI } as const;

function AngleCells({ thruster: { name, direction }, keep }: CellsProps) {
  const angles = anglesOf(direction);
  return (
    <>
      <NumberCell
        {...{ ...ANGLE, label: `Heading of ${name}, degrees`, min: -ANGLE.max }}
        value={angles.heading}
        onKeep={(heading) => keep({ direction: directionOf({ ...angles, heading }) }, "heading")}
      />
      <NumberCell
        {...{ ...ANGLE, label: `Dip of ${name}, degrees`, min: -Math.PI / 2, max: Math.PI / 2 }}
        value={angles.dip}
        onKeep={(dip) => keep({ direction: directionOf({ ...angles, dip }) }, "dip")}
      />
    </>
  );
}

const PART_WORDS = { x: "ahead", y: "to starboard", z: "down" } as const;

function PartCells({ thruster: { name, direction }, keep }: CellsProps) {
  const rest = (axis: "x" | "y" | "z", part: number) => {
    const next = { ...direction, [axis]: part };
    return Math.hypot(next.x, next.y, next.z) > 0 ? null : "All three parts are 0. Needed: a direction.";
  };
  return (
    <>
      {(["x", "y", "z"] as const).map((axis) => (
        <NumberCell
          key={axis}
          {...{ label: `Part ${PART_WORDS[axis]} of ${name}`, dimension: "number", unit: "1", min: -1e6, max: 1e6 }}
          check={(part) => rest(axis, part)}
          value={direction[axis]}
          onKeep={(part) => keep({ direction: { ...direction, [axis]: part } }, "direction")}
        />
      ))}
    </>
  );
}

function ChoiceCells({ build, thruster: { name, spin, drive }, keep }: CellsProps & { readonly build: VehicleBuild }) {
  const drives = build.drives.map((one) => one.name);
  return (
    <>
      <td>
        <select
          aria-label={`Sense of rotation of ${name}`}
          value={spin}
          onChange={(event) => void keep({ spin: event.currentTarget.value as PlacedThruster["spin"] }, "sense")}
        >
          <option value="clockwise">clockwise</option>
          <option value="anticlockwise">anticlockwise</option>
        </select>
      </td>
      <td>
        <select
          aria-label={`Drive of ${name}`}
          value={drive}
          onChange={(event) => void keep({ drive: event.currentTarget.value }, "drive")}
        >
          {!drives.includes(drive) && <option value={drive}>{drive} (gone)</option>}
          {drives.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      </td>
    </>
  );
}

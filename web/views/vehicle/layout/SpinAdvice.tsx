import type { LayoutAnswer } from "../../../../shared/model/vehicle/layoutAnswer.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { editBuild } from "../build/buildState.ts";

/** Senses of rotation taken over from the advice; thrusters that are not in it stay as they are. */
function withSenses(
  build: VehicleBuild,
  names: readonly string[],
  senses: readonly ("clockwise" | "anticlockwise")[],
): VehicleBuild {
  return {
    ...build,
    thrusters: build.thrusters.map((one) => {
      const at = names.indexOf(one.name);
      return at < 0 ? one : { ...one, spin: senses[at]! };
    }),
  };
}

/** What the propellers turn the vehicle by at full ahead, and which senses of rotation cancel it best. */
export function SpinAdvice({ layout }: { readonly layout: LayoutAnswer }) {
  const { spinBalance, thrusters } = layout;
  if (spinBalance === null) {
    return <p class="hint">Not known: no torque of the propellers is stated, or the vehicle does not push ahead.</p>;
  }
  const { sentence, senses, changed } = spinBalance;
  return (
    <>
      <p>{sentence}</p>
      {changed.length > 0 && (
        <button
          type="button"
          onClick={() => void editBuild((build) => withSenses(build, thrusters, senses), "senses of rotation")}
        >
          Turn {changed.map((at) => thrusters[at]).join(", ")} the other way
        </button>
      )}
    </>
  );
}

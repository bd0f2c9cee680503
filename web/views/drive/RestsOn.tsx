import { addressOf } from "../../app/route.ts";
import { bound } from "../../forms/bound.ts";
import { Slider } from "../../forms/Slider.tsx";
import { reynoldsCarried, statedMerit } from "./driveChoices.ts";
import { carriedText, torqueSourceText } from "./driveModel.ts";
import { propellers } from "./drivePropellers.ts";
import { driven } from "./driveState.ts";

/** Where the coefficients come from and how they were carried to this water. */
export function RestsOn() {
  return (
    <>
      <TorqueSources />
      <h3>From the stand to this water</h3>
      <label>
        <input
          type="checkbox"
          checked={reynoldsCarried.value}
          onChange={(event) => {
            reynoldsCarried.value = event.currentTarget.checked;
          }}
        />{" "}
        Carry the coefficients to the Reynolds number at work
      </label>
      <ul>
        {driven.value.map((one) => (
          <li key={one.inHand.name}>{carriedText(one)}</li>
        ))}
      </ul>
      <p class="hint">
        The density is that of this water. Walls and surface near the stand are left out.{" "}
        <a href={addressOf("theory")}>Theory</a> says where each factor comes from.
      </p>
    </>
  );
}

function TorqueSources() {
  return (
    <>
      <ul>
        {propellers.value.map((inHand) => (
          <li key={inHand.name}>
            {torqueSourceText(inHand, statedMerit.value)} At speed: {inHand.propeller.from}.
          </li>
        ))}
      </ul>
      {propellers.value.some(({ torqueSource }) => torqueSource === "statedMerit") && (
        <Slider
          label="Stated static merit where no torque is known"
          symbol="FM"
          {...bound(statedMerit)}
          min={0.2}
          max={0.9}
          step={0.01}
        />
      )}
    </>
  );
}

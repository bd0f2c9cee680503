import { bound } from "../../../forms/bound.ts";
import { Slider } from "../../../forms/Slider.tsx";
import { MERIT_RANGE } from "../theoryModel.ts";
import { staticMerit } from "../theoryState.ts";

/** The merit that the curves are drawn for. */
export function MeritSlider() {
  return (
    <Slider
      label="Stated static merit"
      symbol="FM"
      {...bound(staticMerit)}
      min={MERIT_RANGE.low}
      max={MERIT_RANGE.high}
      step={MERIT_RANGE.step}
    />
  );
}

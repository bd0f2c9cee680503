import { signal } from "@preact/signals";
import { Chart } from "../../charts/Chart.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { Slider } from "../../forms/Slider.tsx";
import { VariantChecks } from "../variants/VariantChecks.tsx";
import { SHOWN_CHOICES, throttlePicture, voltagePicture } from "./driveCharts.ts";
import { throttle } from "./driveChoices.ts";
import { governingText } from "./driveModel.ts";
import { againstVoltage, driven } from "./driveState.ts";
import type { PointQuantity } from "./pointText.ts";

type Across = "throttle" | "voltage";

interface Shown {
  readonly quantity: PointQuantity;
  readonly across: Across;
}

/** What each of the two pictures shows. */
const left = signal<Shown>({ quantity: "thrust", across: "throttle" });
const right = signal<Shown>({ quantity: "supplyCurrent", across: "throttle" });

export function Pictures() {
  return (
    <>
      <Slider
        label="Throttle"
        symbol="delta"
        unit="%"
        value={Math.round(throttle.value * 100)}
        min={0}
        max={100}
        step={1}
        onChange={(percent) => {
          throttle.value = percent / 100;
        }}
      />
      <VariantChecks />
      <ul class="drive-limits">
        {driven.value.map((one) => (
          <li key={one.inHand.name}>{governingText(one)}</li>
        ))}
      </ul>
      <div class="drive-pictures">
        <Picture shown={left} name="First picture" />
        <Picture shown={right} name="Second picture" />
      </div>
    </>
  );
}

/** A component of its own, so that nothing else is drawn again for it. */
function Picture({ shown, name }: { readonly shown: typeof left; readonly name: string }) {
  const { quantity, across } = shown.value;
  const spec =
    across === "throttle"
      ? throttlePicture(driven.value, throttle.value, quantity)
      : voltagePicture(againstVoltage.value, throttle.value, quantity);
  return (
    <div>
      <div class="drive-choices">
        <SelectField
          label={`${name} shows`}
          value={quantity}
          options={SHOWN_CHOICES}
          onChange={(chosen) => {
            shown.value = { ...shown.value, quantity: chosen };
          }}
        />
        <SelectField
          label="against"
          value={across}
          options={[
            { value: "throttle", label: "throttle" },
            { value: "voltage", label: "supply voltage" },
          ]}
          onChange={(chosen) => {
            shown.value = { ...shown.value, across: chosen };
          }}
        />
      </div>
      <Chart spec={spec} height={340} />
    </div>
  );
}

import { computed } from "@preact/signals";
import { noteChoice, route } from "../../../app/route.ts";
import { Chart } from "../../../charts/Chart.tsx";
import { overlayChart } from "../variantsChart.ts";
import { againstBaseline, baseline, groups } from "../variantsState.ts";
import { paretoPicture } from "./paretoPicture.ts";
import { ratioPicture } from "./ratioPicture.ts";

/** The pictures of this screen; the address keeps which one is seen. */
const PICTURES = {
  overlay: "Thrust against rotation rate",
  ratio: "Ratio against rotation rate",
  electrical: "Thrust against electrical power",
  shaft: "Thrust against shaft power",
} as const;
type PictureName = keyof typeof PICTURES;

const picture = computed((): PictureName => {
  const named = route.value.choices.get("picture");
  return named !== null && named in PICTURES ? (named as PictureName) : "overlay";
});

const spec = computed(() => {
  const [all, base] = [groups.value, baseline.value];
  if (picture.value === "electrical") return paretoPicture(all, "electricalPower");
  if (picture.value === "shaft") return paretoPicture(all, "shaftPower");
  return picture.value === "ratio" && base !== null
    ? ratioPicture(all, base, againstBaseline.value)
    : overlayChart(all);
});

export function VariantPictures() {
  return (
    <>
      <fieldset class="row variants-pictures">
        <legend>Picture</legend>
        {(Object.keys(PICTURES) as PictureName[]).map((name) => (
          <label key={name}>
            <input
              type="radio"
              name="variants-picture"
              checked={picture.value === name}
              onChange={() => noteChoice("picture", name)}
            />{" "}
            {PICTURES[name]}
          </label>
        ))}
      </fieldset>
      {spec.value.series.length > 0 ? (
        <Chart spec={spec.value} height={380} />
      ) : (
        <p class="hint">No plateau of these variants has this power.</p>
      )}
    </>
  );
}

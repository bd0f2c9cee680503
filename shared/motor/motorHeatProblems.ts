import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { runawayCurrent, steadyWinding, type WindingInSurroundings } from "./windingTemperature.ts";

/** A winding with what its maker allows, where stated. */
export interface RatedWinding extends WindingInSurroundings {
  /** Continuous current, A. */ readonly currentLimit?: number;
  /** Greatest winding temperature, K. */ readonly temperatureLimit?: number;
}

/** Highest common class of winding insulation, class H, K. IEC 60085:2007. */
export const HIGHEST_INSULATION = 180 + 273.15;

/**
 * What does not fit between the continuous current of a motor, its resistance and its thermal resistance: the loss in the
 * winding alone, without core and friction, would make it too hot or run away. One of the three was then measured
 * otherwise: in air, for a short time, or in another unit.
 */
export function motorHeatProblems(winding: RatedWinding): Warning[] {
  const { currentLimit: current, temperatureLimit = HIGHEST_INSULATION, thermalResistance } = winding;
  if (current === undefined || !(thermalResistance > 0)) return [];
  const runaway = runawayCurrent(winding);
  const rated = `At its continuous current of ${formatNumber(current)} A`;
  const how = `with ${formatNumber(winding.resistance)} Ω and ${formatNumber(thermalResistance)} K/W`;
  if (current >= runaway) {
    const found = `${rated} the winding would have no steady temperature ${how}: from ${formatNumber(runaway)} A on it runs away`;
    return [contradiction("motor.rating-runs-away", found)];
  }
  const { temperature } = steadyWinding(winding, { current, otherLoss: 0 });
  if (temperature <= temperatureLimit) return [];
  const found = `${rated} the winding would come to ${celsius(temperature)} ${how}, above ${celsius(temperatureLimit)}`;
  return [contradiction("motor.rating-too-hot", found)];
}

function contradiction(code: "motor.rating-runs-away" | "motor.rating-too-hot", found: string): Warning {
  return warning({
    code,
    where: "motor thermal resistance",
    found,
    needed: "a continuous current that the winding can carry",
    mend: "Was the current rated for short times or for better cooling, or the thermal resistance found in air? Measure the temperature by the resistance after a long run",
  });
}

const celsius = (T: number) => `${formatNumber(T - 273.15)} °C`;

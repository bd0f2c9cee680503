import type { Scenario } from "../../../shared/model/vehicle/scenario.ts";
import { Slider } from "../../forms/Slider.tsx";
import { hasScenarioChange, keepScenario, scenarioChange, shownVehicle } from "./vehicleState.ts";

interface Knob {
  readonly key: "currentSpeed" | "currentFrom" | "tetherLength" | "tetherOffset" | "depth" | "payload";
  readonly label: string;
  readonly symbol: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** SI of one printed unit. */
  readonly factor: number;
}

const DEGREE = Math.PI / 180;

const KNOBS: readonly Knob[] = [
  { key: "currentSpeed", label: "Current", symbol: "U", unit: "m/s", min: 0, max: 2, step: 0.05, factor: 1 },
  {
    key: "currentFrom",
    label: "From, off the bow",
    symbol: "psi",
    unit: "°",
    min: 0,
    max: 180,
    step: 5,
    factor: DEGREE,
  },
  { key: "depth", label: "Depth", symbol: "h", unit: "m", min: 0, max: 100, step: 1, factor: 1 },
  { key: "tetherLength", label: "Tether paid out", symbol: "L", unit: "m", min: 0, max: 200, step: 1, factor: 1 },
  { key: "tetherOffset", label: "Held at a distance of", symbol: "x", unit: "m", min: 0, max: 150, step: 1, factor: 1 },
  {
    key: "payload",
    label: "Payload, weight in water",
    symbol: "W_p",
    unit: "N",
    min: -20,
    max: 50,
    step: 0.5,
    factor: 1,
  },
];

/** Where it works: moved here for a look, kept with the vehicle only when asked. */
export function ScenarioSliders() {
  const vehicle = shownVehicle.value;
  if (vehicle === null) return null;
  const { scenario, tether } = vehicle;
  const knobs = KNOBS.filter(({ key }) => tether !== undefined || !key.startsWith("tether"));
  return (
    <>
      <div class="vehicle-scenario">
        {knobs.map(({ key, factor, ...knob }) => (
          <Slider
            key={key}
            {...knob}
            value={shownValue(scenario, key, factor)}
            onChange={(value) => {
              scenarioChange.value = { ...scenarioChange.value, ...changed(scenario, key, value * factor) };
            }}
          />
        ))}
      </div>
      {hasScenarioChange.value && (
        <p class="row">
          <button type="button" onClick={() => void keepScenario()}>
            Keep this scenario with the vehicle
          </button>
          <button
            type="button"
            class="quiet"
            onClick={() => {
              scenarioChange.value = {};
            }}
          >
            Back to the one that is kept
          </button>
        </p>
      )}
    </>
  );
}

function shownValue(scenario: Scenario, key: Knob["key"], factor: number): number {
  const si = key === "payload" ? scenario.payload.value : scenario[key];
  return Number((si / factor).toPrecision(6));
}

function changed(scenario: Scenario, key: Knob["key"], si: number): Partial<Scenario> {
  return key === "payload" ? { payload: { ...scenario.payload, value: si } } : { [key]: si };
}

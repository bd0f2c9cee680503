import { fileNameOf } from "../../charts/chartCsv.ts";
import { saveFile } from "../../charts/saveFile.ts";
import { shownVehicle } from "./vehicleState.ts";

/** The vehicle on show as the page asks it of the workbench, complete and in SI units: the command line takes it as it is. */
export function SaveVehicle() {
  const vehicle = shownVehicle.value;
  if (vehicle === null) return null;
  const save = () => {
    const text = `${JSON.stringify(vehicle, null, 2)}\n`;
    saveFile(new Blob([text], { type: "application/json" }), fileNameOf(vehicle.name, "json"));
  };
  return (
    <div class="row">
      <button type="button" onClick={save}>
        Save the vehicle as JSON
      </button>
      <span class="hint">
        For <code>cli vehicle --file</code>
      </span>
    </div>
  );
}

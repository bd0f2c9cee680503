import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { LayoutPicture } from "./LayoutPicture.tsx";
import { LayoutResults } from "./LayoutResults.tsx";

/** The layout with the limits that its drives give on the supply. */
export function LayoutPanel({ answer }: { readonly answer: VehicleAnswer }) {
  return (
    <>
      <LayoutPicture thrusters={answer.layoutRequest.thrusters} />
      <LayoutResults
        name={answer.name}
        request={answer.layoutRequest}
        layout={answer.layout}
        basis="Limits and currents of the thrusters are those of their drives on this supply."
      />
    </>
  );
}

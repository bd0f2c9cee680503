import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { NEWTON } from "../../bench/shownUnits.ts";
import { shownUncertain } from "../answer/units.ts";
import { LayoutPicture } from "./LayoutPicture.tsx";
import { LayoutResults } from "./LayoutResults.tsx";

/** The layout with the limits that its drives give on the supply. */
export function LayoutPanel({ answer }: { readonly answer: VehicleAnswer }) {
  const ahead = answer.motions.find(({ way }) => way === "ahead")?.force ?? null;
  const onHull =
    ahead === null
      ? ""
      : ` The force at rest under “How fast”, ${shownUncertain(ahead, NEWTON)} ahead, is less: of these forces the hull takes back its share, the thrust deduction, and holding the depth comes first.`;
  return (
    <>
      <LayoutPicture thrusters={answer.layoutRequest.thrusters} />
      <LayoutResults
        name={answer.name}
        request={answer.layoutRequest}
        layout={answer.layout}
        basis={`These are forces of the thrusters by themselves, with the limits and currents of their drives on this supply; “within the bus” is as much as its current feeds.${onHull}`}
      />
    </>
  );
}

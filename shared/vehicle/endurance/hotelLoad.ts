import type { VehicleDoubts } from "../propulsion/doubt.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";

/** Whether anything is known of the hotel load: nothing, without doubt, is what is taken where none was stated. */
export const isHotelStated = ({ hotelPower }: VehicleNumbers, { list }: VehicleDoubts): boolean =>
  hotelPower !== 0 || list.some(({ key }) => key === "hotelPower");

import { z } from "zod";
import { si } from "./fields.ts";

/** What a supply feeds besides the thrusters, as fields of a document. */
export const hotelLoad = {
  hotelPower: si(z.number().min(0), {
    symbol: "P_h",
    unit: "W",
    text: "Constant power drawn by the rest of the vehicle",
  }).default(0),
  hotelPowerUncertainty: si(z.number().min(0), {
    symbol: "u(P_h)",
    unit: "W",
    text: "Standard uncertainty of the hotel load",
  }).default(0),
};

import type { DriveRequest, UncertainInput } from "../model/drive.ts";

/** Value of an input that may be uncertain; null where the request leaves its part of the chain out. */
export function inputValue(request: DriveRequest, input: UncertainInput): number | null {
  if (input === "thermalResistance") return request.heat?.thermalResistance ?? null;
  if (input === "wetTorque") return request.wetTorque?.coefficient ?? null;
  return request[input];
}

/** The request with one input changed. */
export function withInput(request: DriveRequest, input: UncertainInput, value: number): DriveRequest {
  if (input === "thermalResistance") {
    return request.heat ? { ...request, heat: { ...request.heat, thermalResistance: value } } : request;
  }
  if (input === "wetTorque") {
    return request.wetTorque ? { ...request, wetTorque: { ...request.wetTorque, coefficient: value } } : request;
  }
  return { ...request, [input]: value };
}

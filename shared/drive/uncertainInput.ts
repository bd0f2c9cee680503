import type { DriveRequest, UncertainInput } from "../model/drive.ts";

/** Value of an input that may be uncertain; null where the request leaves its part of the chain out. */
export function inputValue(request: DriveRequest, input: UncertainInput): number | null {
  if (input === "thermalResistance") return request.heat?.thermalResistance ?? null;
  if (input === "wetTorque") return request.wetTorque?.coefficient ?? null;
  return request[input];
}

/** A request whose uncertain inputs can be changed without touching the one it was made from. */
export function changeable(request: DriveRequest): DriveRequest {
  const { heat, wetTorque } = request;
  return { ...request, ...(heat && { heat: { ...heat } }), ...(wetTorque && { wetTorque: { ...wetTorque } }) };
}

/** Changes one input of a `changeable` request in place; nothing where its part of the chain is left out. */
export function putInput(request: DriveRequest, input: UncertainInput, value: number): void {
  if (input === "thermalResistance") {
    if (request.heat) request.heat.thermalResistance = value;
  } else if (input === "wetTorque") {
    if (request.wetTorque) request.wetTorque.coefficient = value;
  } else {
    request[input] = value;
  }
}

/** The request with one input changed. */
export function withInput(request: DriveRequest, input: UncertainInput, value: number): DriveRequest {
  const changed = changeable(request);
  putInput(changed, input, value);
  return changed;
}

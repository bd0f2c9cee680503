import type { Stretch } from "../../../../shared/log/lineOutbox.ts";

/** Of stretches in order, what lies beyond `place`; two may cover the same bytes. */
export function beyond(place: number, stretches: readonly Stretch[]): Uint8Array[] {
  let reached = place;
  return stretches.flatMap(({ offset, bytes }) => {
    const fresh = bytes.subarray(Math.max(0, reached - offset));
    reached = Math.max(reached, offset + bytes.length);
    return fresh.length > 0 ? [fresh] : [];
  });
}

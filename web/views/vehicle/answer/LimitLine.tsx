import type { LimitingPart } from "../../../../shared/model/vehicle/motionAnswer.ts";
import { wantedSection } from "../../../app/sections.ts";
import { wayToLimit } from "../limitPlace.ts";

interface LimitLineProps {
  readonly limit: LimitingPart | null;
  /** What is asked is missed because of it. */
  readonly missed: boolean;
}

/** A line from what is asked back to the part that stands in the way; that part leads to where it is described. */
export function LimitLine({ limit, missed }: LimitLineProps) {
  if (limit === null) return <>–</>;
  const way = wayToLimit(limit);
  return (
    <>
      {way.length > 0 && (
        <ol class={`limit-line ${missed ? "limit-line-missed" : ""}`} aria-label="Way back to the limiting part">
          {way.map(({ name, section }, at) => (
            <li key={name}>
              {at < way.length - 1 ? (
                name
              ) : (
                <button type="button" class="limit-part" onClick={() => (wantedSection.value = { id: section })}>
                  {name}
                  <span class="visually-hidden">, see where it is described</span>
                </button>
              )}
            </li>
          ))}
        </ol>
      )}
      {limit.text}
    </>
  );
}

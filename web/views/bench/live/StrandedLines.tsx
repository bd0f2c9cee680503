import { stranded } from "./liveState.ts";
import { UnsentLines } from "./UnsentLines.tsx";

/** Lines that came for recordings that were over by then: they are in this browser alone. */
export function StrandedLines() {
  if (stranded.value.length === 0) return null;
  return (
    <section class="card live-stranded" aria-labelledby="live-stranded-title">
      <h2 id="live-stranded-title">Lines without a recording</h2>
      {stranded.value.map((owner) => (
        <div key={owner.recording}>
          <p>
            Lines of {owner.name} came when it had ended already. They are in this browser alone; saved as a file they
            can be dropped above.
          </p>
          <UnsentLines {...owner} />
        </div>
      ))}
    </section>
  );
}

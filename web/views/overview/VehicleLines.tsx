import { addressOf } from "../../app/route.ts";
import type { VehicleLine, Verdict } from "./vehicleLines.ts";

const MARKS: Readonly<Record<Verdict["tone"], string>> = { met: "✓", unsure: "?", missed: "✗" };

/** What each vehicle of the project does with what was measured; every number leads to where it is told at length. */
export function VehicleLines({ lines }: { readonly lines: readonly VehicleLine[] }) {
  const isWorking = lines.some(({ state }) => state === "working");
  return (
    <section class="overview-vehicles" aria-labelledby="overview-vehicles" aria-busy={isWorking}>
      <h2 id="overview-vehicles">{lines.length === 1 ? "What the vehicle does" : "What the vehicles do"}</h2>
      <div class="overview-vehicle-cards">
        {lines.map((line) => (
          <OneVehicle key={line.place} line={line} />
        ))}
      </div>
    </section>
  );
}

function OneVehicle({ line }: { readonly line: VehicleLine }) {
  const { name, place, state, sentence, facts, verdict, limit } = line;
  const to = (section?: string) => addressOf("vehicle", { vehicle: place, ...(section && { section }) });
  return (
    <article class="card overview-vehicle" aria-label={name}>
      <h3>
        <a href={to()}>{name}</a>
      </h3>
      {state === "working" && (
        <p class="row">
          <progress aria-label={`Working out ${name}`} /> {sentence}
        </p>
      )}
      {state === "problem" && <p class="warning">{sentence}</p>}
      {facts.length > 0 && (
        <dl class="overview-facts">
          {facts.map(({ label, value, section }) => (
            <div key={label}>
              <dt>
                <a href={to(section)}>{label}</a>
              </dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {verdict && (
        <p class={`overview-verdict overview-verdict-${verdict.tone}`}>
          <span aria-hidden="true">{MARKS[verdict.tone]}</span> <a href={to("vehicle-requirement")}>What it must do</a>:{" "}
          {verdict.text}
        </p>
      )}
      {state === "answered" && verdict === null && (
        <p class="hint">
          Nothing is asked of it yet. <a href={to("build-require")}>Say what it must do</a>.
        </p>
      )}
      {limit && (
        <p>
          {limit.text} <a href={to(limit.section)}>See that part</a>
        </p>
      )}
    </article>
  );
}

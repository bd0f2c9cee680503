import { addressOf } from "../../app/route.ts";
import type { Stage } from "./chain.ts";

const WORDS: Readonly<Record<Stage["state"], string>> = { stands: "stands", partly: "in part", missing: "missing" };
const MARKS: Readonly<Record<Stage["state"], string>> = { stands: "●", partly: "◐", missing: "○" };

/** The job from log to report: what stands and what is missing, each a link to where it is done. */
export function Chain({ stages }: { readonly stages: readonly Stage[] }) {
  return (
    <nav class="chain" aria-label="From log to report">
      <ol>
        {stages.map(({ name, screen, state, text }) => (
          <li key={name} class={`chain-${state}`}>
            <a href={addressOf(screen)}>
              <span class="chain-name">
                <span aria-hidden="true">{MARKS[state]}</span> {name}
                <span class="visually-hidden"> {WORDS[state]}:</span>
              </span>{" "}
              <span class="chain-text">{text}</span>
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}

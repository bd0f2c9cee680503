import type { ComponentChildren } from "preact";

export interface ScreenProps {
  /** The one question of the screen. */
  readonly question: string;
  /** Its answer in one sentence, with its uncertainty. */
  readonly answer: string;
  /** How the answer is to be taken: plain, something to see to, or not known yet. */
  readonly tone?: "known" | "open" | "problem";
  /** What the answer rests on is still being worked out. */
  readonly isBusy?: boolean;
  /** Under the answer: what it rests on, in small type. */
  readonly basis?: ComponentChildren;
  /** Buttons and choices next to the question. */
  readonly actions?: ComponentChildren;
  readonly picture?: ComponentChildren;
  readonly children?: ComponentChildren;
}

/** The frame that all screens share: question, answer, picture, detail. */
export function Screen({ question, answer, tone = "known", isBusy, basis, actions, picture, children }: ScreenProps) {
  return (
    <article class="screen" aria-labelledby="question">
      <header class="screen-head">
        <h1 id="question" tabIndex={-1}>
          {question}
        </h1>
        {actions && <div class="screen-actions">{actions}</div>}
      </header>
      <p class={`answer answer-${tone}`} role="status" aria-busy={isBusy}>
        {answer}
      </p>
      {basis && <div class="basis">{basis}</div>}
      {picture && <div class="picture">{picture}</div>}
      {children && <div class="detail">{children}</div>}
    </article>
  );
}

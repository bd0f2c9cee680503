import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

export interface FieldIds {
  readonly id: string;
  /** For aria-describedby: help and problem, whichever are shown. */
  readonly describedBy: string | undefined;
  readonly problem: boolean;
}

export interface FieldProps {
  readonly label: string;
  /** PrintedSymbol of the trade, e.g. "D" or "c_0.7"; an underscore starts an index. */
  readonly symbol?: string | undefined;
  /** Of a number that is typed without one; it stands behind the symbol. */
  readonly unit?: string | undefined;
  readonly help?: string | undefined;
  readonly problem?: string | null | undefined;
  readonly optional?: boolean | undefined;
  /** Draws the control itself. */
  readonly children: (ids: FieldIds) => ComponentChildren;
}

/** Label, control, help and problem, tied together for every reader. */
export function Field({ label, symbol, unit, help, problem, optional, children }: FieldProps) {
  const id = useId();
  const shown = [help && `${id}-help`, problem && `${id}-problem`].filter(Boolean).join(" ");
  return (
    <div class={problem ? "field field-problem" : "field"}>
      <label for={id}>
        {label}
        {symbol && (
          <>
            {" "}
            <PrintedSymbol text={symbol} />
          </>
        )}
        {unit && `, ${unit}`}
        {optional && <span class="field-optional"> optional</span>}
      </label>
      {children({ id, describedBy: shown || undefined, problem: Boolean(problem) })}
      {help && (
        <p class="field-help" id={`${id}-help`}>
          {help}
        </p>
      )}
      {problem && (
        <p class="field-message" id={`${id}-problem`} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

const GREEK: Readonly<Record<string, string>> = {
  alpha: "α",
  delta: "δ",
  eta: "η",
  mu: "µ",
  nu: "ν",
  psi: "ψ",
  rho: "ρ",
  sigma: "σ",
};

/** A symbol as it is printed: "K_T" is K with index T; a ratio "A_E/A_0" is two of them. */
export function PrintedSymbol({ text }: { readonly text: string }) {
  return (
    <i class="symbol">
      {text.split("/").map((part, at) => {
        const [base = "", index] = part.split("_");
        return (
          <span key={part}>
            {at > 0 && "/"}
            {GREEK[base] ?? base}
            {index && <sub>{index}</sub>}
          </span>
        );
      })}
    </i>
  );
}

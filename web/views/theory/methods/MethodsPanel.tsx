import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { modelEvidence } from "../../../../shared/propeller/blade/modelEvidence.ts";
import { TableBox } from "../../../app/TableBox.tsx";
import { evidenceRows, evidenceSentence } from "./evidenceModel.ts";
import { METHODS, type Method } from "./methods.data.ts";
import { wantedMethod } from "./wantedMethod.ts";

/** Each model behind this screen on one short page: idea, equations, range, how sure, sources. */
export function MethodsPanel() {
  return (
    <>
      {METHODS.map((method) => (
        <MethodPage key={method.id} method={method} />
      ))}
    </>
  );
}

function MethodPage({ method }: { readonly method: Method }) {
  const [open, setOpen] = useState(false);
  const page = useRef<HTMLDetailsElement>(null);
  const wanted = wantedMethod.value === method.id;
  useEffect(() => {
    if (!wanted) return;
    setOpen(true);
    page.current?.scrollIntoView({ block: "start" });
    page.current?.querySelector("summary")?.focus({ preventScroll: true });
    wantedMethod.value = null;
  }, [wanted]);
  return (
    <details ref={page} id={`method-${method.id}`} open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{method.name}</summary>
      <dl class="method-page">
        <dt>Idea</dt>
        <dd>{method.idea}</dd>
        <dt>Equations</dt>
        <dd>
          {method.equations.map((equation) => (
            <p key={equation} class="method-equation">
              {equation}
            </p>
          ))}
        </dd>
        <dt>Range</dt>
        <dd>{method.range}</dd>
        <dt>How sure</dt>
        <dd>{method.sure}</dd>
        <dt>Source</dt>
        <dd>
          <ul>
            {method.sources.map((source) => (
              <li key={source}>{source}</li>
            ))}
          </ul>
        </dd>
      </dl>
      {method.id === "section" && open && <Evidence />}
    </details>
  );
}

/** Blade elements beside measured research propellers; computed here, when it is asked for. */
function Evidence() {
  const evidence = useMemo(modelEvidence, []);
  return (
    <>
      <p>{evidenceSentence(evidence)}</p>
      <TableBox label="Blade elements beside measured research propellers">
        <table>
          <caption class="visually-hidden">Blade elements beside measured research propellers</caption>
          <thead>
            <tr>
              {[
                "Propeller",
                "Re at 0.75 R",
                "J",
                "K_T measured",
                "computed off by",
                "10 K_Q measured",
                "computed off by",
              ].map((head, at) => (
                <th key={`${head} ${at}`} scope="col" class={at > 0 ? "number" : ""}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {evidenceRows(evidence).map((cells) => (
              <tr key={cells.join(" ")}>
                {cells.map((cell, at) => (
                  <td key={`${cell} ${at}`} class={at > 0 ? "number" : ""}>
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}

import { CAUTIONS, WHO_DECIDES } from "./cautionWords.ts";

/** The usual cautions where a screen leads to work with blades, packs or electricity near water. */
export function Caution({ about, open = false }: { readonly about: keyof typeof CAUTIONS; readonly open?: boolean }) {
  return (
    <details class="caution" open={open}>
      <summary>Before you switch anything on: blades, packs, electricity near water</summary>
      <ul>
        {CAUTIONS[about].map((words) => (
          <li key={words}>{words}</li>
        ))}
        <li>{WHO_DECIDES}</li>
      </ul>
    </details>
  );
}

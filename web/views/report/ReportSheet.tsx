import { Outlines } from "../vehicle/layout/Outlines.tsx";
import { ReportPicture } from "./ReportPicture.tsx";
import type { ReportBlock, ReportTable } from "./reportBlocks.ts";
import type { ReportSection } from "./reportModel.ts";

/** The report as it is printed and saved: no buttons, no links, nothing that is folded. */
export function ReportSheet({
  name,
  made,
  sections,
}: {
  readonly name: string;
  readonly made: string;
  readonly sections: readonly ReportSection[];
}) {
  return (
    <article class="report-sheet" id="report-sheet" aria-label={`Report of ${name}`}>
      <header>
        <h2>{name}: report</h2>
        <p>{made}</p>
      </header>
      {sections.map(({ id, title, blocks }) => (
        <section key={id} id={`report-${id}`}>
          <h3>{title}</h3>
          {blocks.map((block, at) => (
            <Block key={`${at} ${block.kind}`} block={block} />
          ))}
        </section>
      ))}
    </article>
  );
}

function Block({ block }: { readonly block: ReportBlock }) {
  switch (block.kind) {
    case "text":
      return <p>{block.strong ? <strong>{block.text}</strong> : block.text}</p>;
    case "heading":
      return <h4>{block.text}</h4>;
    case "list":
      return (
        <ul>
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case "table":
      return <Table table={block} />;
    case "picture":
      return <ReportPicture spec={block.spec} />;
    case "outlines":
      return <Outlines outlines={[...block.outlines]} />;
    case "commands":
      return <pre>{block.lines.join("\n")}</pre>;
  }
}

/** A hash or a file name without a blank: it may be broken anywhere, other words may not. */
const UNBROKEN = /\S{30}/;

function Table({ table: { label, heads, rows } }: { readonly table: ReportTable }) {
  return (
    <table class={heads.length > 7 ? "report-wide" : ""}>
      <caption>{label}</caption>
      <thead>
        <tr>
          {heads.map((head, at) => (
            <th key={`${at} ${head}`} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((cells, row) => (
          <tr key={`${row} ${cells[0]}`}>
            {cells.map((cell, at) =>
              at === 0 ? (
                <th key={heads[at]} scope="row">
                  {cell}
                </th>
              ) : (
                <td key={`${at} ${heads[at]}`} class={UNBROKEN.test(cell) ? "report-long" : ""}>
                  {cell}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

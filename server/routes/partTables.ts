import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { PartsTablePreview, PartsTableRequest } from "../../shared/model/partsTable.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { exportTable } from "../../shared/partsTable/exportTable.ts";
import type { TableKind } from "../../shared/partsTable/tableFields.ts";
import { importParts, previewParts } from "../intake/importParts.ts";
import { InProject, type Workbench } from "./workbench.ts";

export interface PartTableOptions {
  readonly workbench: Workbench;
  readonly kind: TableKind;
  /** A stored part of this kind. */
  readonly StoredPart: z.ZodType<StoredDocument<unknown>>;
}

type Plain = Readonly<Record<string, unknown>>;

/** One kind of part as a table. Registered under /api/projects/:projectId/parts/:kind/table. */
export const partTableRoutes: FastifyPluginAsyncZod<PartTableOptions> = async (app, options) => {
  const { kind, StoredPart } = options;
  const { store } = options.workbench;
  const tags = ["Parts"];
  const params = InProject;
  const body = PartsTableRequest;

  const Imported = z
    .strictObject({
      added: z.array(StoredPart),
      changed: z.array(z.strictObject({ before: StoredPart, after: StoredPart })),
      leftOut: z.array(z.int().describe("Line of the table, from 1")),
    })
    .describe("What was added and changed, and the lines that were left out");

  const previewed = {
    tags,
    summary: `What a table would make of the ${kind}`,
    description: "Nothing is stored. What the table leaves open is asked in `open`; answer it in `choices`.",
    params,
    body,
    response: { 200: PartsTablePreview },
  };
  app.post("/preview", { schema: previewed }, async ({ params: { projectId }, body: request }) =>
    previewParts(store, projectId, kind, request),
  );

  const imported = {
    tags,
    summary: `Import a table of ${kind}`,
    description: "All rows or none, in one step. Refused while the preview leaves anything open.",
    params,
    body,
    response: { 200: Imported },
  };
  app.post("", { schema: imported }, async ({ params: { projectId }, body: request }) =>
    importParts(store, projectId, kind, request),
  );

  const exported = {
    tags,
    summary: `The ${kind} as a table`,
    description: "Comma-separated text with units in the heads. Imported again it gives the same parts.",
    params,
    response: { 200: { description: "The table", content: { "text/csv": { schema: z.string() } } } },
  };
  app.get("", { schema: exported }, async ({ params: { projectId } }, reply) => {
    const parts = store.parts(projectId, kind).list();
    const text = exportTable(
      kind,
      parts.map(({ document }) => document as Plain),
    );
    reply.header("content-disposition", `attachment; filename="${kind}.csv"`);
    return reply.type("text/csv; charset=utf-8").send(text as never);
  });
};

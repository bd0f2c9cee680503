import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { PartsTablePreview, PartsTableRequest } from "../../shared/model/partsTable.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { exportTable } from "../../shared/partsTable/exportTable.ts";
import type { TableKind } from "../../shared/partsTable/tableFields.ts";
import { importParts, previewParts } from "../intake/importParts.ts";
import { sentAsIs } from "./sentAsIs.ts";
import { InProject, type Workbench } from "./workbench.ts";

const tags = ["Parts"];
const params = InProject;

export interface PartTableOptions {
  readonly workbench: Workbench;
  readonly kind: TableKind;
  /** A stored part of this kind. */
  readonly StoredPart: z.ZodType<StoredDocument<unknown>>;
}

type Plain = Readonly<Record<string, unknown>>;

/** What the API says of the table of one kind of part. */
const schemasOf = ({ kind, StoredPart }: Pick<PartTableOptions, "kind" | "StoredPart">) => ({
  previewed: {
    tags,
    summary: `What a table would make of the ${kind}`,
    description: "Nothing is stored. What the table leaves open is asked in `open`; answer it in `choices`.",
    params,
    body: PartsTableRequest,
    response: { 200: PartsTablePreview },
  },
  imported: {
    tags,
    summary: `Import a table of ${kind}`,
    description: "All rows or none, in one step. Refused while the preview leaves anything open.",
    params,
    body: PartsTableRequest,
    response: { 200: importedOf(StoredPart) },
  },
  exported: {
    tags,
    summary: `The ${kind} as a table`,
    description: "Comma-separated text with units in the heads. Imported again it gives the same parts.",
    params,
    response: sentAsIs("The table", "text/csv"),
  },
});

const importedOf = (StoredPart: PartTableOptions["StoredPart"]) =>
  z
    .strictObject({
      added: z.array(StoredPart),
      changed: z.array(z.strictObject({ before: StoredPart, after: StoredPart })),
      leftOut: z.array(z.int().describe("Line of the table, from 1")),
    })
    .describe("What was added and changed, and the lines that were left out");

/** One kind of part as a table. Registered under /api/projects/:projectId/parts/:kind/table. */
export const partTableRoutes: FastifyPluginAsyncZod<PartTableOptions> = async (app, options) => {
  const { kind } = options;
  const { store } = options.workbench;
  const { previewed, imported, exported } = schemasOf(options);

  app.post("/preview", { schema: previewed }, async ({ params: { projectId }, body }) =>
    previewParts(store, projectId, kind, body),
  );

  app.post("", { schema: imported }, async ({ params: { projectId }, body }) =>
    importParts(store, projectId, kind, body),
  );

  app.get("", { schema: exported }, async ({ params: { projectId } }, reply) => {
    const documents = store
      .parts(projectId, kind)
      .list()
      .map(({ document }) => document as Plain);
    reply.header("content-disposition", `attachment; filename="${kind}.csv"`);
    return reply.type("text/csv; charset=utf-8").send(exportTable(kind, documents));
  });
};

import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { PART_SCHEMAS, PartKind, type PartOf } from "../../shared/model/parts/partKinds.ts";
import { type StoredDocument, storedSchema } from "../../shared/model/stored.ts";
import type { DocumentShelf } from "../store/documentShelf.ts";
import { partTableRoutes } from "./partTables.ts";
import { AtVersion, change, Gone, InProject, OnePart, type Workbench } from "./workbench.ts";

const tags = ["Parts"];

const STORED = {
  propellers: storedSchema(PART_SCHEMAS.propellers).meta({ id: "StoredPropeller" }),
  motors: storedSchema(PART_SCHEMAS.motors).meta({ id: "StoredMotor" }),
  controllers: storedSchema(PART_SCHEMAS.controllers).meta({ id: "StoredController" }),
  packs: storedSchema(PART_SCHEMAS.packs).meta({ id: "StoredPack" }),
  tethers: storedSchema(PART_SCHEMAS.tethers).meta({ id: "StoredTether" }),
  gears: storedSchema(PART_SCHEMAS.gears).meta({ id: "StoredGear" }),
  instruments: storedSchema(PART_SCHEMAS.instruments).meta({ id: "StoredInstrument" }),
} as const;

const AllParts = z
  .strictObject({
    propellers: z.array(STORED.propellers),
    motors: z.array(STORED.motors),
    controllers: z.array(STORED.controllers),
    packs: z.array(STORED.packs),
    tethers: z.array(STORED.tethers),
    gears: z.array(STORED.gears),
    instruments: z.array(STORED.instruments),
  })
  .meta({ id: "AllParts" });

/** Parts of a project. Registered under /api/projects/:projectId/parts. */
export const partRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store } = workbench;
  const all = { tags, summary: "All parts of a project", params: InProject, response: { 200: AllParts } };
  app.get("", { schema: all }, async ({ params: { projectId } }) => ({
    propellers: store.parts(projectId, "propellers").list(),
    motors: store.parts(projectId, "motors").list(),
    controllers: store.parts(projectId, "controllers").list(),
    packs: store.parts(projectId, "packs").list(),
    tethers: store.parts(projectId, "tethers").list(),
    gears: store.parts(projectId, "gears").list(),
    instruments: store.parts(projectId, "instruments").list(),
  }));

  for (const kind of PartKind.options) await app.register(routesOfKind, { prefix: `/${kind}`, workbench, kind });
};

type AnyPart = PartOf[PartKind];

/** One kind of part: the same acts for each, with a schema of its own. */
const routesOfKind: FastifyPluginAsyncZod<{ workbench: Workbench; kind: PartKind }> = async (app, options) => {
  const { kind } = options;
  const shelf = (projectId: string) => options.workbench.store.parts(projectId, kind) as DocumentShelf<AnyPart>;
  const Part = PART_SCHEMAS[kind] as z.ZodType<AnyPart>;
  const StoredPart = STORED[kind] as z.ZodType<StoredDocument<AnyPart>>;
  const label = (act: string) => ({ tags, summary: `${act} of the ${kind}` });

  const added = { ...label("Add one"), params: InProject, body: Part, response: { 201: StoredPart } };
  app.post("", { schema: added }, async ({ params, body }, reply) =>
    reply.code(201).send(shelf(params.projectId).add(body)),
  );

  const changed = { ...label("Change one"), params: OnePart, body: change(Part), response: { 200: StoredPart } };
  app.put("/:id", { schema: changed }, async ({ params: { projectId, id }, body }) =>
    shelf(projectId).write(id, body.version, body.document as AnyPart),
  );

  const removed = { ...label("Delete one"), params: OnePart, querystring: AtVersion, response: { 204: Gone } };
  app.delete("/:id", { schema: removed }, async ({ params: { projectId, id }, query }, reply) => {
    shelf(projectId).remove(id, query.version);
    return reply.code(204).send(null);
  });

  // Calibrations of instruments have many shapes and fit no row of a table.
  if (kind !== "instruments")
    await app.register(partTableRoutes, { prefix: "/table", workbench: options.workbench, kind, StoredPart });

  const restored = { ...label("Take back the deletion of one"), params: OnePart, response: { 200: StoredPart } };
  app.post("/:id/restore", { schema: restored }, async ({ params: { projectId, id } }) => shelf(projectId).restore(id));
};

import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { Name, Note } from "../../shared/model/fields.ts";
import { ShortlistRequest } from "../../shared/model/shortlist.ts";
import { PropellerDesignRequest, PropellerDesigns } from "../../shared/model/shortlistDesign.ts";
import { type KeptShortlist, ShortlistEntry, StoredShortlist } from "../../shared/model/shortlistStored.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { shortlistCsv } from "../../shared/shortlist/shortlistCsv.ts";
import { PROGRAM } from "../program.ts";
import { shortlistOnPool } from "../work/shortlists.ts";
import type { WorkOptions } from "../work/workPool.ts";
import { EVENT_STREAM, EVENTS, sentAsIs } from "./sentAsIs.ts";
import { untilClosed } from "./untilClosed.ts";
import { AtVersion, Gone, InProject, OneShortlist, type Workbench } from "./workbench.ts";
import { workEvents } from "./workEvents.ts";

const tags = ["Shortlist"];

const NewShortlist = z
  .strictObject({
    name: Name.exactOptional().describe("What it is kept under; the name of the requirement if absent"),
    note: Note.default(""),
    request: ShortlistRequest,
  })
  .meta({ id: "NewShortlist" });
type NewShortlist = z.infer<typeof NewShortlist>;

const ExportChoice = z.strictObject({
  format: z
    .enum(["csv", "json"])
    .default("csv")
    .describe("csv: the ranked combinations; json: everything that is kept"),
});

const all = {
  tags,
  summary: "All shortlists that are kept",
  params: InProject,
  response: { 200: z.strictObject({ shortlists: z.array(ShortlistEntry) }) },
};

const made = {
  tags,
  summary: "Try every combination of a parts box against a requirement, and keep the outcome",
  description: "Closing the connection stops the work.",
  params: InProject,
  body: NewShortlist,
  response: { 201: StoredShortlist },
};

const watched = {
  ...made,
  summary: "The same with its progress",
  description:
    "Server-sent events: `progress` with `fraction` from 0 to 1, then `shortlist` with what is kept or `problem` with problem details. Closing the connection stops the work.",
  response: EVENTS,
};

const designed = {
  tags,
  summary: "Diameter and pitch of series propellers that suit each motor best",
  description: "Closing the connection stops the work. Nothing is kept.",
  params: InProject,
  body: PropellerDesignRequest,
  response: { 200: PropellerDesigns },
};

const designWatched = {
  ...designed,
  summary: "The same with its progress",
  description:
    "Server-sent events: `progress` with `fraction` from 0 to 1, then `designs` or `problem` with problem details. Closing the connection stops the work.",
  response: EVENTS,
};

const one = { tags, summary: "One shortlist", params: OneShortlist, response: { 200: StoredShortlist } };

const exported = {
  tags,
  summary: "A shortlist as a file",
  params: OneShortlist,
  querystring: ExportChoice,
  response: sentAsIs("The file", "text/csv"),
};

const removed = {
  tags,
  summary: "Delete a shortlist",
  params: OneShortlist,
  querystring: AtVersion,
  response: { 204: Gone },
};

const restored = { tags, summary: "Take back a deletion", params: OneShortlist, response: { 200: StoredShortlist } };

/** Shortlists of a project. Registered under /api/projects/:projectId/shortlists. */
export const shortlistRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store, pool } = workbench;
  app.get("", { schema: all }, async ({ params: { projectId } }) => ({
    shortlists: store.shortlists(projectId).list().map(entryOf),
  }));

  app.post("", { schema: made }, async ({ params: { projectId }, body }, reply) =>
    reply.code(201).send(await keptShortlist(workbench, { projectId, asked: body }, untilClosed(reply))),
  );

  app.post("/progress", { schema: watched }, async ({ params: { projectId }, body }, reply) => {
    const events = workEvents("shortlist", (options) => keptShortlist(workbench, { projectId, asked: body }, options));
    return reply.type(EVENT_STREAM).send(events);
  });

  app.post("/designs", { schema: designed }, async ({ body }, reply) =>
    pool.run({ kind: "propellerDesign", request: body }, untilClosed(reply)),
  );

  app.post("/designs/progress", { schema: designWatched }, async ({ body }, reply) => {
    const events = workEvents("designs", (options) => pool.run({ kind: "propellerDesign", request: body }, options));
    return reply.type(EVENT_STREAM).send(events);
  });

  app.get("/:id", { schema: one }, async ({ params: { projectId, id } }) => store.shortlists(projectId).find(id));

  app.get("/:id/file", { schema: exported }, async ({ params: { projectId, id }, query: { format } }, reply) => {
    const { document } = store.shortlists(projectId).find(id);
    reply.header("content-disposition", `attachment; filename="shortlist.${format}"`);
    const text = format === "csv" ? shortlistCsv(document.result) : `${JSON.stringify(document, null, 2)}\n`;
    return reply.type(format === "csv" ? "text/csv; charset=utf-8" : "application/json").send(text);
  });

  app.delete("/:id", { schema: removed }, async ({ params: { projectId, id }, query }, reply) => {
    store.shortlists(projectId).remove(id, query.version);
    return reply.code(204).send(null);
  });

  app.post("/:id/restore", { schema: restored }, async ({ params: { projectId, id } }) =>
    store.shortlists(projectId).restore(id),
  );
};

interface Asked {
  readonly projectId: string;
  readonly asked: NewShortlist;
}

async function keptShortlist(
  { store, pool }: Workbench,
  { projectId, asked }: Asked,
  options: WorkOptions,
): Promise<StoredDocument<KeptShortlist>> {
  const { name = asked.request.requirement.name, note, request } = asked;
  const begun = performance.now();
  const result = await shortlistOnPool(pool, request, options);
  const seconds = (performance.now() - begun) / 1000;
  const madeAt = new Date().toISOString();
  return store.shortlists(projectId).add({ name, note, request, result, program: PROGRAM, madeAt, seconds });
}

function entryOf({ id, version, document }: StoredDocument<KeptShortlist>): ShortlistEntry {
  const { name, program, madeAt, result } = document;
  const { answer, counts } = result;
  return { id, version, name, answer, combinations: counts.combinations, meeting: counts.meeting, program, madeAt };
}

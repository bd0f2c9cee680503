import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { OpenedBundle } from "../../shared/model/bundle.ts";
import { bundleOf } from "../bundle/bundleOf.ts";
import { openBundle } from "../bundle/openBundle.ts";
import { uploadedBundle } from "../intake/uploadedFile.ts";
import { attachment } from "./attachment.ts";
import { sentAsIs } from "./sentAsIs.ts";
import { untilClosed } from "./untilClosed.ts";
import { InProject, type Workbench } from "./workbench.ts";

const tags = ["Projects"];

const saved = {
  tags,
  summary: "A whole project as one file",
  description:
    "A ZIP file with manifest.json, every document as JSON and every log as it came, by its SHA-256. What was deleted and recordings that still run are not in it.",
  params: InProject,
  response: sentAsIs("The file", "application/zip"),
};

/** A project as one file. Registered under /api/projects/:projectId/bundle. */
export const bundleRoute: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench: { store } }) => {
  app.get("", { schema: saved }, async ({ params: { projectId } }, reply) => {
    const { document } = store.projects.find(projectId);
    const bundle = await bundleOf(store, projectId, { savedAt: new Date(), ...untilClosed(reply) });
    reply.header("content-disposition", attachment(`${document.name}.zip`));
    return reply.type("application/zip").send(bundle);
  });
};

const opened = {
  tags,
  summary: "Make a new project of a file that a project was saved as",
  description:
    "A multipart form with one file, in the field `file`. Every byte is checked against its hash and every document against its schema; everything gets a new identity. All of it is entered or nothing.",
  response: { 201: OpenedBundle },
};

/** Projects from files. Registered under /api/bundles. */
export const bundlesRoute: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench: { store } }) => {
  app.post("", { schema: opened }, async (request, reply) =>
    reply.code(201).send(await openBundle(store, { bytes: await uploadedBundle(request) })),
  );
};

import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { OpenedBundle } from "../../shared/model/bundle.ts";
import { bundleOf } from "../bundle/bundleOf.ts";
import { openBundle } from "../bundle/openBundle.ts";
import { uploadedBundle } from "../intake/uploadedFile.ts";
import { untilClosed } from "./untilClosed.ts";
import { InProject, type Workbench } from "./workbench.ts";

const tags = ["Projects"];
const FILE = { 200: { description: "The file", content: { "application/zip": { schema: z.string() } } } };

/** A project as one file. Registered under /api/projects/:projectId/bundle. */
export const bundleRoute: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench: { store } }) => {
  const saved = {
    tags,
    summary: "A whole project as one file",
    description:
      "A ZIP file with manifest.json, every document as JSON and every log as it came, by its SHA-256. What was deleted and recordings that still run are not in it.",
    params: InProject,
    response: FILE,
  };
  app.get("", { schema: saved }, async ({ params: { projectId } }, reply) => {
    const { document } = store.projects.find(projectId);
    const bundle = await bundleOf(store, projectId, { savedAt: new Date(), ...untilClosed(reply) });
    reply.header("content-disposition", disposition(`${document.name}.zip`));
    return reply.type("application/zip").send(bundle as never);
  });
};

/** Projects from files. Registered under /api/bundles. */
export const bundlesRoute: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench: { store } }) => {
  const opened = {
    tags,
    summary: "Make a new project of a file that a project was saved as",
    description:
      "A multipart form with one file, in the field `file`. Every byte is checked against its hash and every document against its schema; everything gets a new identity. All of it is entered or nothing.",
    response: { 201: OpenedBundle },
  };
  app.post("", { schema: opened }, async (request, reply) =>
    reply.code(201).send(await openBundle(store, { bytes: await uploadedBundle(request) })),
  );
};

/** RFC 6266: a plain name for old readers, the whole one beside it. */
function disposition(name: string): string {
  const plain = name.replaceAll(/[^A-Za-z0-9 ._-]/g, "_");
  const whole = encodeURIComponent(name).replaceAll(/['()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16)}`);
  return `attachment; filename="${plain}"; filename*=UTF-8''${whole}`;
}

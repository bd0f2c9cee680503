import type { FastifyPluginAsync } from "fastify";
import { bundleRoute } from "./bundles.ts";
import { comparisonRoutes } from "./comparison.ts";
import { partRoutes } from "./parts.ts";
import { recordingLineRoutes } from "./recordingLines.ts";
import { recordingRoutes } from "./recordings.ts";
import { runLogRoutes } from "./runLogs.ts";
import { runResultRoutes } from "./runResults.ts";
import { runRoutes } from "./runs.ts";
import { shortlistRoutes } from "./shortlists.ts";
import type { Workbench } from "./workbench.ts";

/** Everything that stands in a project: there only while the project is. Registered under /api/projects/:projectId. */
export const insideProject: FastifyPluginAsync<{ workbench: Workbench }> = async (app, { workbench }) => {
  app.addHook("preHandler", async ({ params }) => {
    workbench.store.projects.find((params as { projectId: string }).projectId);
  });
  await app.register(partRoutes, { prefix: "/parts", workbench });
  await app.register(runRoutes, { prefix: "/runs", workbench });
  await app.register(runLogRoutes, { prefix: "/runs/:id", workbench });
  await app.register(runResultRoutes, { prefix: "/runs/:id", workbench });
  await app.register(recordingRoutes, { prefix: "/recordings", workbench });
  await app.register(recordingLineRoutes, { prefix: "/recordings/:id", workbench });
  await app.register(shortlistRoutes, { prefix: "/shortlists", workbench });
  await app.register(comparisonRoutes, { workbench });
  await app.register(bundleRoute, { prefix: "/bundle", workbench });
};

import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { Project } from "../../shared/model/project.ts";
import { storedSchema } from "../../shared/model/stored.ts";
import { AtVersion, change, Gone, InProject, type Workbench } from "./workbench.ts";

const tags = ["Projects"];
const StoredProject = storedSchema(Project).meta({ id: "StoredProject" });
const params = InProject;

const created = { tags, summary: "Begin a project", body: Project, response: { 201: StoredProject } };

const one = { tags, summary: "One project", params, response: { 200: StoredProject } };

const changed = {
  tags,
  summary: "Change a project",
  params,
  body: change(Project),
  response: { 200: StoredProject },
};

const removed = { tags, summary: "Delete a project", params, querystring: AtVersion, response: { 204: Gone } };

const restored = { tags, summary: "Take back a deletion", params, response: { 200: StoredProject } };

/** Projects. Registered under /api/projects. */
export const projectRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { projects } = workbench.store;

  const list = { 200: z.strictObject({ projects: z.array(StoredProject) }) };
  app.get("", { schema: { tags, summary: "All projects", response: list } }, async () => ({
    projects: projects.list(),
  }));

  app.post("", { schema: created }, async (request, reply) => reply.code(201).send(projects.add(request.body)));

  app.get("/:projectId", { schema: one }, async (request) => projects.find(request.params.projectId));

  app.put("/:projectId", { schema: changed }, async ({ params: { projectId }, body }) =>
    projects.write(projectId, body.version, body.document),
  );

  app.delete("/:projectId", { schema: removed }, async (request, reply) => {
    projects.remove(request.params.projectId, request.query.version);
    return reply.code(204).send(null);
  });

  app.post("/:projectId/restore", { schema: restored }, async (request) => projects.restore(request.params.projectId));
};

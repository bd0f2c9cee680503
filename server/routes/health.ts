import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { PROGRAM } from "../program.ts";

const Health = z
  .strictObject({ status: z.literal("ok"), program: z.string().describe("Program and version") })
  .meta({ id: "Health" });

const schema = { tags: ["Workbench"], summary: "Whether it answers", response: { 200: Health } };

/** Whether the workbench answers. Registered under /api. */
export const healthRoutes: FastifyPluginAsyncZod = async (app) => {
  app.get("/health", { schema }, async () => ({ status: "ok" as const, program: PROGRAM }));
};

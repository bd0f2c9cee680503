import type { FastifyPluginAsync } from "fastify";
import { apiPage } from "../docs/apiPage.ts";
import { API_PAGE_STYLE } from "../docs/apiPageStyle.ts";
import type { OpenApiDocument } from "../docs/openApi.ts";

/** The description of the interface, for programs and for people. Registered under /api. */
export const docsRoutes: FastifyPluginAsync = async (app) => {
  const schema = { hide: true };
  app.get("/openapi.json", { schema }, async () => app.swagger());
  app.get("/docs", { schema }, async (_, reply) =>
    reply.type("text/html; charset=utf-8").send(apiPage(app.swagger() as OpenApiDocument)),
  );
  app.get("/docs.css", { schema }, async (_, reply) => reply.type("text/css; charset=utf-8").send(API_PAGE_STYLE));
};

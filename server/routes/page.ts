import { existsSync } from "node:fs";
import { join } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance } from "fastify";
import { sendProblem } from "../problems/answerProblem.ts";
import { noSuchAddress } from "../problems/serverRefusals.ts";

const NOT_BUILT = `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Bollard Bench: not built</title></head>
<body><h1>The page is not built yet</h1>
<p>Stop the workbench, run <code>npm run build</code> in its folder, and start it again with <code>npm start</code>.</p>
<p>The <a href="/api/docs">interface for programs</a> works already.</p></body></html>
`;

/** The page and its files. Addresses of the page itself, like /bench, all give the page; the rest is told to be missing. */
export async function servePage(app: FastifyInstance, folder: string): Promise<void> {
  const built = existsSync(join(folder, "index.html"));
  if (built)
    await app.register(fastifyStatic, {
      root: folder,
      cacheControl: false,
      setHeaders: (reply, path) => {
        reply.header("cache-control", cacheFor(path));
      },
    });
  app.setNotFoundHandler(async (request, reply) => {
    const { method } = request;
    const path = request.url.replace(/\?.*$/s, "");
    if (method !== "GET" || path.startsWith("/api/") || /\.\w+$/.test(path))
      return sendProblem(reply, noSuchAddress(method, path));
    reply.header("cache-control", "no-cache").type("text/html; charset=utf-8");
    return built ? reply.sendFile("index.html") : reply.send(NOT_BUILT);
  });
}

/** Built files carry a hash of their content in their name and never change; the page names them and does. */
function cacheFor(path: string): string {
  return /[\\/]assets[\\/]/.test(path) ? "public, max-age=31536000, immutable" : "no-cache";
}

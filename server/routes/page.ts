import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance, FastifyReply } from "fastify";
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
  const index = join(folder, "index.html");
  const built = existsSync(index);
  if (built) await app.register(fastifyStatic, { root: folder, cacheControl: false, setHeaders: setCache });
  app.setNotFoundHandler(async (request, reply) => {
    const path = request.url.replace(/\?.*$/s, "");
    if (!isOfPage(request.method, path)) return sendProblem(reply, noSuchAddress(request.method, path));
    reply.header("cache-control", "no-cache").type("text/html; charset=utf-8");
    return built ? readFile(index) : NOT_BUILT;
  });
}

/** Files and the interface have addresses of their own; what is left is a place within the page. */
function isOfPage(method: string, path: string): boolean {
  return method === "GET" && path !== "/api" && !path.startsWith("/api/") && !/\.\w+$/.test(path);
}

/** Built files carry a hash of their content in their name and never change; the page names them and does. */
function setCache(reply: FastifyReply, path: string): void {
  const forGood = /[\\/]assets[\\/]/.test(path);
  reply.header("cache-control", forGood ? "public, max-age=31536000, immutable" : "no-cache");
}

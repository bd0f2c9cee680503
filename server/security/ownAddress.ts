import type { FastifyInstance, FastifyRequest } from "fastify";
import { Refusal } from "../problems/problemDetails.ts";

const NAMES = ["127.0.0.1", "localhost", "[::1]"];
const READING = ["GET", "HEAD", "OPTIONS"];

/**
 * Answers only requests that name this computer as their host, and lets only its own pages write.
 *
 * The first keeps out a page of another site whose name was made to point here (DNS rebinding); the second a form or
 * script on another site. A program that is no browser sends no origin and may write.
 */
export function keepToOwnAddress(app: FastifyInstance): void {
  app.addHook("onRequest", async (request) => {
    if (!isOwn(request.headers.host, app)) throw notThisHost(request);
    if (READING.includes(request.method)) return;
    const { origin } = request.headers;
    const crossSite = request.headers["sec-fetch-site"] === "cross-site";
    if (crossSite || (origin !== undefined && !isOwnOrigin(origin, app))) throw notFromThere(origin ?? "another site");
  });
}

function isOwn(host: string | undefined, app: FastifyInstance): boolean {
  const [, name = "", port = "80"] = /^(\[[^\]]*\]|[^:]*)(?::(\d+))?$/.exec(host ?? "") ?? [];
  const address = app.server.address();
  // Without a port of our own (requests injected in a test) there is none to compare.
  const ownPort = typeof address === "object" && address !== null ? String(address.port) : port;
  return NAMES.includes(name.toLowerCase()) && port === ownPort;
}

function isOwnOrigin(origin: string, app: FastifyInstance): boolean {
  return origin.startsWith("http://") && isOwn(origin.slice("http://".length), app);
}

function notThisHost(request: FastifyRequest): Refusal {
  return new Refusal(421, {
    code: "server.not-this-host",
    where: "Host header",
    found: `The request was meant for "${request.headers.host ?? ""}"`,
    needed: "127.0.0.1 or localhost, with the port that was printed at the start",
    mend: "Open the address that was printed at the start",
  });
}

function notFromThere(origin: string): Refusal {
  return new Refusal(403, {
    code: "server.foreign-origin",
    where: "Origin header",
    found: `A page of ${origin} tried to change something here`,
    needed: "a page of this workbench, or a program that sends no Origin",
    mend: "",
  });
}

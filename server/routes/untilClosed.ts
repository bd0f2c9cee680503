import type { FastifyReply } from "fastify";

/** A signal that comes when the answer is done or its connection closes: nobody waits for the outcome any more. */
export function untilClosed(reply: FastifyReply): { readonly signal: AbortSignal } {
  const abort = new AbortController();
  reply.raw.once("close", () => abort.abort());
  return { signal: abort.signal };
}

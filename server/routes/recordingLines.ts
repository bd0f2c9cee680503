import { createReadStream } from "node:fs";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { Held, LiveResult } from "../../shared/model/recording.ts";
import { liveEvents } from "../recording/liveEvents.ts";
import { EVENT_STREAM, EVENTS, sentAsIs } from "./sentAsIs.ts";
import { OneRecording, type Workbench } from "./workbench.ts";

const tags = ["Recordings"];
const params = OneRecording;
const At = z.strictObject({
  offset: z.coerce
    .number()
    .int()
    .min(0)
    .exactOptional()
    .describe("Bytes of the recording before this body. Where it is stated, a body sent twice is taken once"),
});

const posted = {
  tags,
  summary: "Post lines",
  description:
    "The body is text, one line or many; it is kept byte for byte, and a line may be cut between two bodies. The answer comes when all of it is on the disk. A body that begins behind what is held is refused and told where to go on from. A body without end is taken as it comes.",
  params,
  querystring: At,
  response: { 200: Held },
};

const asked = { tags, summary: "What the lines say so far", params, response: { 200: LiveResult } };

const watched = {
  tags,
  summary: "What is held and what it says, as it changes",
  description:
    "Server-sent events: `held` each time lines came, `result` with what they say, made anew when the last one is done, and `problem` with problem details once the recording is over.",
  params,
  response: EVENTS,
};

const bytes = {
  tags,
  summary: "The lines, byte for byte as they came",
  params,
  response: sentAsIs("The lines", "text/plain"),
};

/** The lines of a recording and what they say. Registered under /api/projects/:projectId/recordings/:id. */
export const recordingLineRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store, recorder, live } = workbench;
  // Bytes as they came, of whatever kind they are said to be, and as they come: a program may send on for hours.
  app.removeAllContentTypeParsers();
  app.addContentTypeParser("*", (_request, payload, done) => done(null, payload));
  const logOf = ({ projectId, id }: z.infer<typeof OneRecording>) => {
    store.recordings(projectId).find(id);
    return recorder.log(id);
  };

  app.post("/lines", { schema: posted }, async ({ params: place, query: { offset }, body }) => {
    let log = await logOf(place);
    let at = offset;
    for await (const piece of pieces(body)) {
      // Looked up anew each time: a body may go on for hours, and the recording be discarded meanwhile.
      log = await logOf(place);
      await log.append(piece, at);
      if (at !== undefined) at += piece.length;
    }
    return log.held;
  });

  app.get("/result", { schema: asked }, async ({ params: { projectId, id } }) => live.result(projectId, id));

  app.get("/events", { schema: watched }, async ({ params: { projectId, id } }, reply) => {
    await logOf({ projectId, id });
    const events = liveEvents((watching) => live.watch(projectId, id, watching));
    return reply.type(EVENT_STREAM).send(events);
  });

  app.get("/file", { schema: bytes }, async ({ params: place }, reply) => {
    const { held } = await logOf(place);
    const text = createReadStream(recorder.path(place.id), { end: held.bytes - 1 });
    return reply.type("text/plain").send(held.bytes === 0 ? Buffer.alloc(0) : text);
  });
};

/** The body as it comes; none where there is none. */
async function* pieces(body: unknown): AsyncIterable<Uint8Array> {
  if (typeof body === "object" && body !== null && Symbol.asyncIterator in body) {
    yield* body as AsyncIterable<Uint8Array>;
  }
}

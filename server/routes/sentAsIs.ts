import type { Readable } from "node:stream";
import { z } from "zod";

/** What no serializer touches: told as text on the page of the API, sent byte for byte. */
const AsItIs = z.string() as unknown as z.ZodType<Readable | Buffer | string>;

/** The reply of a route that sends a file, a table or events of this media type. */
export const sentAsIs = (description: string, mediaType: string) => ({
  200: { description, content: { [mediaType]: { schema: AsItIs } } },
});

export const EVENT_STREAM = "text/event-stream";
/** The reply of a route that tells of work or of a recording as server-sent events. */
export const EVENTS = sentAsIs("Events", EVENT_STREAM);

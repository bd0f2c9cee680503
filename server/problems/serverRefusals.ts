import type { FastifyError } from "fastify";
import type { Problem } from "../../shared/quantity/problem.ts";
import { type ProblemDetails, problemDetails } from "./problemDetails.ts";

/** Greatest size of a JSON body, bytes. */
export const BODY_LIMIT = 8 * 1024 * 1024;
/** Greatest size of a log, bytes. */
export const FILE_LIMIT = 2 * 1024 ** 3;
/** Greatest size of a project as one file, bytes. */
export const BUNDLE_LIMIT = 8 * 1024 ** 3;

type Told = readonly [status: number, problem: Problem];

const say = (code: string, found: string, needed: string, mend: string): Problem => ({
  code,
  where: "",
  found,
  needed,
  mend,
});

const unreadable = say(
  "server.not-json",
  "The body is not complete JSON",
  "one JSON document",
  "Check its brackets and quotes",
);
const wrongContent = say(
  "server.wrong-content",
  "The body comes as a kind of content that this address does not take",
  "application/json, or multipart/form-data where a log is sent",
  "Set the Content-Type header",
);
const bodyTooLarge = say(
  "server.body-too-large",
  "The body is larger than 8 MB",
  "at most 8 MB of JSON",
  "Send a log as a file, not as text",
);
/** A log beyond `FILE_LIMIT`. */
export const logTooLarge = say(
  "server.file-too-large",
  "The log is larger than 2 GB",
  "at most 2 GB",
  "Cut the log into parts, one for each run",
);
/** A project file beyond `BUNDLE_LIMIT`. */
export const bundleTooLarge = say(
  "server.file-too-large",
  "The project file is larger than 8 GB",
  "at most 8 GB",
  "Save the project in two, each with a part of the runs",
);
const notOneFile = say(
  "server.not-one-file",
  "The form does not hold exactly one file",
  "one file, in the field called file",
  "",
);
const incomplete = say(
  "server.upload-incomplete",
  "The upload broke off before its end",
  "the whole file",
  "Send it again. Nothing of it was kept",
);

/** Refusals of the server library and its plugins, by their codes. */
const TOLD: Readonly<Record<string, Told>> = {
  FST_ERR_CTP_INVALID_JSON_BODY: [400, unreadable],
  FST_ERR_CTP_EMPTY_JSON_BODY: [400, unreadable],
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: [400, incomplete],
  FST_ERR_CTP_INVALID_MEDIA_TYPE: [415, wrongContent],
  FST_INVALID_MULTIPART_CONTENT_TYPE: [415, wrongContent],
  FST_ERR_CTP_BODY_TOO_LARGE: [413, bodyTooLarge],
  FST_REQ_FILE_TOO_LARGE: [413, logTooLarge],
  FST_MP_PREMATURE_CLOSE: [400, incomplete],
  FST_FILES_LIMIT: [400, notOneFile],
  FST_PARTS_LIMIT: [400, notOneFile],
  FST_FIELDS_LIMIT: [400, notOneFile],
  ERR_STREAM_PREMATURE_CLOSE: [400, incomplete],
  ECONNRESET: [400, incomplete],
};

const unreadableRequest = say(
  "server.unreadable",
  "The request can not be read",
  "a request as /api/docs describes it",
  "",
);

/** What the server library refused, in our words; undefined for anything else. */
export function refusalOfServer({
  code = "",
  statusCode = 500,
  message,
}: Partial<FastifyError>): ProblemDetails | undefined {
  const told =
    TOLD[code] ??
    (message === "Unexpected end of form" || message === "Premature close" ? ([400, incomplete] as const) : undefined);
  if (told !== undefined) return problemDetails(...told);
  return statusCode >= 400 && statusCode < 500 ? problemDetails(statusCode, unreadableRequest) : undefined;
}

/** Nothing is served at this address. */
export function noSuchAddress(method: string, path: string): ProblemDetails {
  const words = say("server.no-such-address", `There is nothing at ${method} ${path}`, "an address of /api/docs", "");
  return problemDetails(404, { ...words, where: path });
}

/** More came in a minute than any page asks. */
export function tooMany(after: string): Problem {
  return say(
    "server.too-many",
    "More requests came in a minute than the workbench answers",
    "a pause",
    `Try again in ${after}`,
  );
}

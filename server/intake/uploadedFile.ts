import type { FastifyRequest } from "fastify";
import { Refusal } from "../problems/problemDetails.ts";
import { BUNDLE_LIMIT, bundleTooLarge } from "../problems/serverRefusals.ts";
import type { IncomingLog } from "./newRun.ts";
import { shortened } from "./shortened.ts";

/** The file of a multipart request, as a stream. Throws Refusal if there is none. */
export async function uploadedFile(request: FastifyRequest): Promise<IncomingLog> {
  const part = await request.file();
  if (part === undefined || part.fieldname !== "file") throw noFile(part?.fieldname);
  return { fileName: plainName(part.filename), bytes: whole(part.file) };
}

/** The bytes of a project file of a multipart request, as a stream. Throws Refusal if there is none. */
export async function uploadedBundle(request: FastifyRequest): Promise<AsyncIterable<Uint8Array>> {
  const part = await request.file({ limits: { fileSize: BUNDLE_LIMIT } });
  if (part === undefined || part.fieldname !== "file") throw noFile(part?.fieldname);
  return whole(part.file, "bundle");
}

/** The bytes to the last; a stream that was cut at the size limit ends with a refusal instead of quietly. */
async function* whole(stream: AsyncIterable<Uint8Array> & { readonly truncated: boolean }, of?: "bundle") {
  yield* stream;
  if (stream.truncated && of === "bundle") throw new Refusal(413, bundleTooLarge);
  if (stream.truncated) throw Object.assign(new Error("cut at the limit"), { code: "FST_REQ_FILE_TOO_LARGE" });
}

/** Without folders or control characters, which some senders put in. */
function plainName(sent: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
  const name = (sent.split(/[\\/]/).at(-1) ?? "").replace(/[\u0000-\u001f\u007f]/g, "").trim();
  return name === "" ? "log" : shortened(name, 255);
}

function noFile(field: string | undefined): Refusal {
  return new Refusal(400, {
    code: "server.not-one-file",
    where: field ?? "form",
    found: field === undefined ? "The form holds no file" : `The file is in the field "${field}"`,
    needed: "one file, in the field called file",
    mend: "",
  });
}

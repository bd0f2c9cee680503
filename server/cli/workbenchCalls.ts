import { InputProblem } from "../../shared/quantity/problem.ts";

/** An answer of a running workbench; status 0 and no body where none came. */
interface Answer {
  readonly status: number;
  readonly body: unknown;
}

/** Asks the workbench at `address` and takes whatever it answers. */
export async function call(method: string, address: string, body?: object | Uint8Array<ArrayBuffer>): Promise<Answer> {
  const isBytes = body instanceof Uint8Array;
  try {
    const response = await fetch(address, {
      method,
      headers: { "content-type": isBytes ? "text/plain" : "application/json" },
      ...(body !== undefined && { body: isBytes ? body : JSON.stringify(body) }),
    });
    return { status: response.status, body: await response.json() };
  } catch {
    return { status: 0, body: null };
  }
}

/** Asks and throws InputProblem with the workbench's own sentence where it refuses, or `cli.no-workbench`. */
export async function ask<T>(method: string, address: string, body?: object): Promise<T> {
  const answer = await call(method, address, body ?? (method === "POST" ? {} : undefined));
  if (answer.status >= 200 && answer.status < 300) return answer.body as T;
  if (answer.status === 0) throw noWorkbench(new URL(address).origin);
  throw refused(answer.body);
}

/** The bytes at `address` as they come. Throws as `ask`. */
export async function download(address: string): Promise<ReadableStream<Uint8Array>> {
  const response = await fetch(address).catch(() => {
    throw noWorkbench(new URL(address).origin);
  });
  if (response.ok && response.body !== null) return response.body;
  throw refused(await response.json().catch(() => null));
}

/** Sends one file as a form does, as it is read; nothing of it is held in memory. Throws as `ask`. */
export async function sendFile<T>(
  address: string,
  { name, stream }: { readonly name: string; readonly stream: ReadableStream<Uint8Array> },
): Promise<T> {
  const mark = `----${crypto.randomUUID()}`;
  const plain = name.replaceAll(/["\r\n]/g, "_");
  const form = async function* () {
    const text = new TextEncoder();
    yield text.encode(
      `--${mark}\r\ncontent-disposition: form-data; name="file"; filename="${plain}"\r\ncontent-type: application/octet-stream\r\n\r\n`,
    );
    yield* stream;
    yield text.encode(`\r\n--${mark}--\r\n`);
  };
  const headers = { "content-type": `multipart/form-data; boundary=${mark}` };
  // Checked with the types of a browser as well, whose fetch takes no body that is made while it is sent.
  const request = { method: "POST", headers, body: form(), duplex: "half" } as never;
  const response = await fetch(address, request).catch(() => {
    throw noWorkbench(new URL(address).origin);
  });
  const body: unknown = await response.json().catch(() => null);
  if (response.ok) return body as T;
  throw refused(body);
}

/** What a refusal says, or that there was none to be read. */
export function reasonOf(body: unknown): string {
  const { detail } = (body ?? {}) as { detail?: unknown };
  return typeof detail === "string" ? detail : "The workbench does not answer.";
}

function refused(body: unknown): InputProblem {
  const { code } = (body ?? {}) as { code?: unknown };
  const found = reasonOf(body).replace(/\.$/, "");
  return new InputProblem({ code: String(code), where: "", found, needed: "", mend: "" });
}

function noWorkbench(address: string): InputProblem {
  return new InputProblem({
    code: "cli.no-workbench",
    where: address,
    found: "No workbench answers there",
    needed: "one that runs",
    mend: "Start it with npm start, or give the address it prints with --workbench",
  });
}

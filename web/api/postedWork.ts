import { type ApiProblem, problemFrom } from "./apiProblem.ts";

/** Who is told of work that takes long. */
export interface ToldOfWork<T> {
  /** Share that is done, 0 to 1. */
  readonly progress: (fraction: number) => void;
  readonly outcome: (outcome: T) => void;
  readonly problem: (problem: ApiProblem) => void;
}

interface Posted {
  readonly path: string;
  readonly body: unknown;
  /** Name of the event that carries the outcome. */
  readonly name: string;
}

/** Starts work with a body too long for an address, and follows its server-sent events. The returned function stops it. */
export function followPosted<T>({ path, body, name }: Posted, told: ToldOfWork<T>): () => void {
  const abort = new AbortController();
  void follow({ path, body, name }, told, abort.signal);
  return () => abort.abort();
}

async function follow<T>({ path, body, name }: Posted, told: ToldOfWork<T>, signal: AbortSignal): Promise<void> {
  try {
    const response = await fetch(path, {
      method: "POST",
      headers: { "content-type": "application/json", accept: "text/event-stream" },
      body: JSON.stringify(body),
      signal,
    });
    if (!response.ok || response.body === null) {
      told.problem(problemFrom(response.status, await response.json().catch(() => null)));
      return;
    }
    for await (const { event, data } of eventsOf(response.body)) {
      if (event === "progress") told.progress(Number(data["fraction"]));
      else if (event === name) return told.outcome(data as T);
      else if (event === "problem") return told.problem(problemFrom(statusOf(data), data));
    }
    told.problem(noAnswer());
  } catch {
    if (!signal.aborted) told.problem(noAnswer());
  }
}

const statusOf = ({ status }: Record<string, unknown>) => (typeof status === "number" ? status : 422);

const noAnswer = () =>
  problemFrom(0, { code: "page.no-answer", detail: "The workbench stopped answering during the work." });

interface ServerEvent {
  readonly event: string;
  readonly data: Record<string, unknown>;
}

/** Events of a stream (HTML Living Standard, 9.2.6): blocks of lines parted by an empty one. */
async function* eventsOf(stream: ReadableStream<Uint8Array>): AsyncGenerator<ServerEvent> {
  const reader = stream.pipeThrough(new TextDecoderStream() as ReadableWritablePair<string, Uint8Array>).getReader();
  let waiting = "";
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    waiting += value;
    const blocks = waiting.split("\n\n");
    waiting = blocks.pop() ?? "";
    for (const block of blocks) yield eventOf(block);
  }
}

function eventOf(block: string): ServerEvent {
  const field = (name: string) =>
    block
      .split("\n")
      .filter((line) => line.startsWith(`${name}:`))
      .map((line) => line.slice(name.length + 1).trim())
      .join("\n");
  return { event: field("event"), data: JSON.parse(field("data") || "{}") };
}

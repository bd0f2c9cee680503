import { ApiProblem, problemFrom } from "./apiProblem.ts";

export interface Asking {
  readonly method?: "GET" | "POST" | "PUT" | "DELETE";
  /** Sent as JSON. */
  readonly body?: unknown;
  /** Sent as it is, e.g. a form with a file. */
  readonly form?: FormData;
  readonly signal?: AbortSignal | undefined;
}

/** Asks the workbench; resolves to the parsed body, or null for an empty one. Throws ApiProblem. */
export async function ask<T>(path: string, { method = "GET", body, form, signal }: Asking = {}): Promise<T> {
  const response = await reach(path, {
    method,
    headers: { accept: "application/json", ...(body === undefined ? {} : { "content-type": "application/json" }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...(form === undefined ? {} : { body: form }),
    ...(signal ? { signal } : {}),
  });
  const text = await response.text();
  const parsed = parseJson(text);
  if (!response.ok) throw problemFrom(response.status, parsed);
  return parsed as T;
}

async function reach(path: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(path, init);
  } catch (thrown) {
    if (thrown instanceof DOMException && thrown.name === "AbortError") throw thrown;
    throw new ApiProblem({
      status: 0,
      code: "page.no-answer",
      detail:
        "The workbench does not answer. Is it still running? Start it again with npm start; nothing saved is lost.",
    });
  }
}

function parseJson(text: string): unknown {
  if (text === "") return null;
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

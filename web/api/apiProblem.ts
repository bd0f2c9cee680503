/** One place in a document or file that the server could not use. */
export interface ProblemPart {
  readonly code: string;
  readonly where: string;
  readonly message: string;
}

/** What the server said instead of an answer: RFC 9457 problem details. `message` is the whole sentence. */
export class ApiProblem extends Error {
  readonly status: number;
  readonly code: string;
  readonly detail: string;
  readonly where: string;
  readonly problems: readonly ProblemPart[];
  /** The version that is stored now, where a write named an older one. */
  readonly currentVersion: number | undefined;

  constructor(told: {
    readonly status: number;
    readonly code: string;
    readonly detail: string;
    readonly where?: string;
    readonly problems?: readonly ProblemPart[];
    readonly currentVersion?: number;
  }) {
    super(told.detail);
    this.name = "ApiProblem";
    this.status = told.status;
    this.code = told.code;
    this.detail = told.detail;
    this.where = told.where ?? "";
    this.problems = told.problems ?? [];
    this.currentVersion = told.currentVersion;
  }

  /** Someone else wrote the document after it was read. */
  get isConflict(): boolean {
    return this.status === 409 && this.currentVersion !== undefined;
  }
}

/** The sentence to show for anything that was thrown. */
export function sentenceOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}

const UNREADABLE =
  "The workbench answered in a form this page does not know. Reload the page; if it stays, restart it.";

/** The problem that a refused response carries, also where its body is not problem details. */
export function problemFrom(status: number, body: unknown): ApiProblem {
  const told = (typeof body === "object" && body !== null ? body : {}) as Record<string, unknown>;
  const text = (key: string) => (typeof told[key] === "string" ? (told[key] as string) : undefined);
  const currentVersion = told["currentVersion"];
  return new ApiProblem({
    status,
    code: text("code") ?? "page.unknown-answer",
    detail: text("detail") ?? text("title") ?? UNREADABLE,
    where: text("where") ?? "",
    problems: Array.isArray(told["problems"]) ? (told["problems"] as ProblemPart[]) : [],
    ...(typeof currentVersion === "number" ? { currentVersion } : {}),
  });
}

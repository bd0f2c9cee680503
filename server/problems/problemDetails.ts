import { z } from "zod";
import { type Problem, sentence } from "../../shared/quantity/problem.ts";

/** RFC 9457 problem details, as every refusal of the server is sent. */
export const ProblemDetails = z
  .strictObject({
    type: z.string().describe("urn:bollard-bench:problem: followed by the code"),
    title: z.string().describe("What kind of refusal this is"),
    status: z.int().describe("HTTP status"),
    detail: z.string().describe("The whole sentence, ready to show"),
    code: z.string().describe("Stable code, room.kebab-case"),
    where: z.string().describe("File, row, column, option or field it is about"),
    problems: z
      .array(z.strictObject({ code: z.string(), where: z.string(), message: z.string() }))
      .describe("Each by itself, where there are several")
      .exactOptional(),
    currentVersion: z.int().describe("Version that is stored, where a write named an older one").exactOptional(),
  })
  .meta({ id: "ProblemDetails" });
export type ProblemDetails = z.infer<typeof ProblemDetails>;

const TITLES: Readonly<Record<number, string>> = {
  400: "The request can not be read",
  403: "Not from this address",
  404: "Nothing there",
  405: "Not this way",
  409: "Changed meanwhile",
  413: "Too large",
  415: "Not this kind of content",
  421: "Not this host",
  422: "The input can not be used",
  429: "Too many requests",
  499: "Stopped",
  500: "The workbench has a fault",
  503: "The data folder can not be used",
  507: "The disk is full",
};

/** The problem as it is sent with `status`. */
export function problemDetails(status: number, problem: Problem): ProblemDetails {
  return {
    type: `urn:bollard-bench:problem:${problem.code}`,
    title: TITLES[status] ?? "Refused",
    status,
    detail: sentence(problem),
    code: problem.code,
    where: problem.where,
  };
}

/** A refusal of the server itself, with the status it is sent with. */
export class Refusal extends Error {
  constructor(
    readonly status: number,
    readonly problem: Problem,
  ) {
    super(sentence(problem));
  }
}

import type { FastifyError, FastifyReply, FastifyRequest } from "fastify";
import { InputProblem, OutOfDomain, type Problem, sentence } from "../../shared/quantity/problem.ts";
import { NothingThere, StaleVersion } from "../store/refusals.ts";
import { storageProblem } from "../store/storageProblem.ts";
import { WorkCancelled, WorkFailed } from "../work/workPool.ts";
import { type ProblemDetails, problemDetails, Refusal } from "./problemDetails.ts";
import { UnfitRequest } from "./requestCheck.ts";
import { refusalOfServer } from "./serverRefusals.ts";

/** The one place where anything thrown becomes an answer. */
export function answerProblem(reason: unknown, _request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const details = detailsOf(reason);
  if (details.status >= 500) console.error(reason);
  return sendProblem(reply, details);
}

export function sendProblem(reply: FastifyReply, details: ProblemDetails): FastifyReply {
  // Bytes: no response schema of a route is asked what a refusal looks like, and the type stays as it is registered.
  return reply
    .code(details.status)
    .type("application/problem+json")
    .send(Buffer.from(JSON.stringify(details)));
}

/** What is told of `reason`; nothing of the inside of the program. */
export function detailsOf(reason: unknown): ProblemDetails {
  if (reason instanceof UnfitRequest) return unfit(reason);
  if (reason instanceof Refusal) return problemDetails(reason.status, reason.problem);
  if (reason instanceof NothingThere) return problemDetails(404, reason.problem);
  if (reason instanceof StaleVersion) {
    return { ...problemDetails(409, reason.problem), currentVersion: reason.currentVersion };
  }
  if (reason instanceof InputProblem || reason instanceof OutOfDomain) return problemDetails(422, reason.problem);
  if (reason instanceof WorkCancelled) return problemDetails(499, STOPPED);
  if (reason instanceof WorkFailed) return problemDetails(500, WORK_FAILED);
  return ofStorage(reason) ?? refusalOfServer(reason as Partial<FastifyError>) ?? problemDetails(500, UNEXPECTED);
}

function unfit({ problems }: UnfitRequest): ProblemDetails {
  const [first] = problems;
  const each = problems.map((problem) => ({ code: problem.code, where: problem.where, message: sentence(problem) }));
  return { ...problemDetails(400, first), detail: problems.map(sentence).join(" "), problems: each };
}

function ofStorage(reason: unknown): ProblemDetails | undefined {
  const problem = storageProblem(reason)?.problem;
  return problem && problemDetails(problem.code === "store.full" ? 507 : 503, problem);
}

const STOPPED: Problem = {
  code: "work.stopped",
  where: "",
  found: "The work was stopped before it was done",
  needed: "",
  mend: "Ask again to start it anew",
};

const WORK_FAILED: Problem = {
  code: "work.failed",
  where: "",
  found: "Reading or reducing the log stopped on a fault of the workbench, not of the log",
  needed: "",
  mend: "Ask again; if it happens again, report it with the log. Nothing that is stored was changed",
};

const UNEXPECTED: Problem = {
  code: "server.unexpected",
  where: "",
  found: "The workbench met a fault of its own",
  needed: "",
  mend: "The window it was started in shows more. Nothing that was stored before is lost",
};

import { designPropellersInSteps } from "../../shared/shortlist/design/designPropellers.ts";
import { finishedShortlist } from "../../shared/shortlist/finish.ts";
import { rankStretch } from "../../shared/shortlist/rank.ts";
import { searchStretch } from "../../shared/shortlist/search.ts";
import { preparedRecords } from "../../shared/shortlist/shortlist.ts";
import type { Outcomes, ShortlistJob } from "./jobs.ts";

/** One step of a search, for a thread. Yields the share that is done. */
export function* shortlistWork(job: ShortlistJob): Generator<number, Outcomes[ShortlistJob["kind"]]> {
  if (job.kind === "propellerDesign") return yield* designPropellersInSteps(job.request);
  const { request } = job;
  const records = preparedRecords(request);
  switch (job.kind) {
    case "shortlistPart":
      return yield* searchStretch(request.requirement, records, { ...job, misses: request.misses });
    case "shortlistRank":
      return yield* rankStretch(request.requirement, records, job.stretch, job.scoring, request.rows);
    case "shortlistEnd":
      return finishedShortlist(request, records, job.tally, job.ranked);
  }
}

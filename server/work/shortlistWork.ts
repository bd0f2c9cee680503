import type { ShortlistRequest } from "../../shared/model/shortlist.ts";
import { designPropellersInSteps } from "../../shared/shortlist/design/designPropellers.ts";
import { finishedShortlist } from "../../shared/shortlist/finish.ts";
import type { PartRecords } from "../../shared/shortlist/partRecords.ts";
import { rankStretch } from "../../shared/shortlist/rank.ts";
import { searchStretch } from "../../shared/shortlist/search.ts";
import { preparedRecords } from "../../shared/shortlist/shortlist.ts";
import type { Outcomes, ShortlistJob } from "./jobs.ts";

/** Records of the request that was worked on last: a search comes in many stretches of the same one. */
let last: { readonly key: string; readonly records: PartRecords } | undefined;

function recordsFor(request: ShortlistRequest): PartRecords {
  const key = JSON.stringify(request);
  if (last?.key !== key) last = { key, records: preparedRecords(request) };
  return last.records;
}

/** One step of a search, for a thread. Yields the share that is done. */
export function* shortlistWork(job: ShortlistJob): Generator<number, Outcomes[ShortlistJob["kind"]]> {
  if (job.kind === "propellerDesign") return yield* designPropellersInSteps(job.request);
  const { request } = job;
  const records = recordsFor(request);
  switch (job.kind) {
    case "shortlistPart":
      return yield* searchStretch(request.requirement, records, { ...job, misses: request.misses });
    case "shortlistRank":
      return yield* rankStretch(request.requirement, records, job.stretch, job.scoring, request.rows);
    case "shortlistEnd":
      return finishedShortlist(request, records, job.tally, job.ranked);
  }
}

import type { WireAndFuse, WireAndFuseRequest } from "../model/wireAndFuse.ts";
import { formatNumber } from "../quantity/format.ts";
import type { Problem } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { FUSE_MARGIN, type FuseSeries } from "./fuseRatings.data.ts";

export interface FoundWire extends Pick<WireAndFuse, "wires" | "fuse"> {
  readonly series: FuseSeries;
}

/** What can not be met, and what contradicts itself. */
export function wireWarnings(request: WireAndFuseRequest, found: FoundWire): Warning[] {
  return [
    packTooWeak(request),
    noFuse(request, found),
    fuseAbovePack(request, found),
    ...found.wires.flatMap((wire) => noWire(request, wire)),
  ]
    .filter((problem) => problem !== null)
    .map(warning);
}

function packTooWeak({ packCurrent, continuousCurrent: I }: WireAndFuseRequest): Problem | null {
  if (packCurrent === undefined || packCurrent >= I) return null;
  return {
    code: "supply.pack-below-current",
    where: "packCurrent",
    found: `The pack gives ${formatNumber(packCurrent)} A continuously and ${formatNumber(I)} A are to be drawn`,
    needed: "a pack for the current, whatever the wire",
    mend: "Use a larger pack, or open the throttle less",
  };
}

function noFuse({ continuousCurrent: I }: WireAndFuseRequest, { fuse, series }: FoundWire): Problem | null {
  if (fuse !== null) return null;
  return {
    code: "supply.no-fuse",
    where: "continuousCurrent",
    found: `No fuse of the list reaches ${FUSE_MARGIN} times ${formatNumber(I)} A; the largest is ${series.ratings.at(-1)} A`,
    needed: "a current that the list covers",
    mend: "Share the current between several fused wires, or ask a maker of fuses",
  };
}

function fuseAbovePack({ packCurrent, continuousCurrent: I }: WireAndFuseRequest, found: FoundWire): Problem | null {
  const { fuse } = found;
  if (packCurrent === undefined || fuse === null || fuse <= packCurrent || packCurrent < I) return null;
  return {
    code: "supply.fuse-above-pack",
    where: "packCurrent",
    found: `The next fuse above ${FUSE_MARGIN} times ${formatNumber(I)} A is ${formatNumber(fuse)} A, more than the ${formatNumber(packCurrent)} A that the pack gives continuously`,
    needed: `a pack of at least ${formatNumber(fuse)} A, or a current for which a smaller fuse will do`,
    mend: "The fuse would then guard the wire and not the pack: use a larger pack, or draw less",
  };
}

const LIST_NAMES = { metric: "metric sizes up to 50 mm²", gauge: "AWG sizes up to 1/0" } as const;

function noWire(
  { allowedDrop }: WireAndFuseRequest,
  { list, chosen, byDrop, byCurrent }: WireAndFuse["wires"][number],
): Problem[] {
  if (chosen !== null) return [];
  const reason =
    byDrop === null
      ? `keeps the drop to ${formatNumber(100 * allowedDrop)} %`
      : byCurrent === null
        ? "carries the current at this density"
        : "carries the rating of the fuse at this density";
  return [
    {
      code: "supply.no-wire",
      where: byDrop === null ? "length" : "continuousCurrent",
      found: `None of the ${LIST_NAMES[list]} ${reason}`,
      needed: "a shorter way, a higher voltage, a larger allowed drop or less current",
      mend: "Use several pairs in parallel, or a higher voltage on the long way",
    },
  ];
}

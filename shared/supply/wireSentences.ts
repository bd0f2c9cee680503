import type { WireAndFuse, WireAndFuseRequest, WireChoice } from "../model/wireAndFuse.ts";
import { formatNumber, formatPercent } from "../quantity/format.ts";
import { FUSE_MARGIN } from "./fuseRatings.data.ts";

/** The suggestion in words: wire of each list, fuse, and what to beware of. */
export function wireSentences(
  request: WireAndFuseRequest,
  { wires, fuse, fuseSeries }: Pick<WireAndFuse, "wires" | "fuse" | "fuseSeries">,
): string[] {
  const names = wires.flatMap(({ chosen }) => (chosen === null ? [] : [chosen]));
  return [
    ...names.map((wire) => wireSentence(request, wire)),
    ...(fuse === null
      ? []
      : [
          `Fuse: ${formatNumber(fuse)} A, the next above ${FUSE_MARGIN} times ${formatNumber(request.continuousCurrent)} A (common practice, no source); ratings from the ${fuseSeries}. It sits next to the pack, within a hand's breadth of its plus pole.`,
        ]),
    `The wire is counted with ${formatNumber(request.currentDensity * 1e-6)} A/mm² (common practice, no source): a coiled tether, a tight bundle or a hot hull carries less.`,
    ...CAUTIONS,
  ];
}

/** What stands between a suggestion and a wire. */
const CAUTIONS = [
  "A short circuit of a lithium pack starts a fire within seconds: fuse every pack, connect last, and go by the data sheets of wire, fuse and pack.",
  "Local codes come before this suggestion. Mains, and anything above some 50 V near water, is work for a qualified person.",
];

function wireSentence({ voltage, length }: WireAndFuseRequest, { name, drop, dropShare, loss }: WireChoice): string {
  return `${name}: ${formatNumber(drop)} V of ${formatNumber(voltage)} V (${formatPercent(dropShare)}) is lost over ${formatNumber(length)} m there and back, ${formatNumber(loss)} W of heat.`;
}

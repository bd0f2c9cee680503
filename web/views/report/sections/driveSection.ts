import { plainMessage } from "../../../app/plainMessage.ts";
import { carriedText, governingText, pointRows, torqueSourceText } from "../../drive/driveModel.ts";
import { list, once, picture, type ReportBlock, table, text } from "../reportBlocks.ts";
import type { ReportInput } from "../reportInput.ts";

/** The drive that is chosen, and what it does at the chosen throttle. */
export function driveSection({ drive }: ReportInput): ReportBlock[] {
  const { answer, throttle, chosen, driven, statedMerit } = drive;
  const at = `At ${Math.round(100 * throttle)}\u202f% throttle`;
  const runs = driven.some(({ point }) => point !== null);
  return [
    text(answer),
    ...list(chosen),
    ...picture(drive.picture),
    ...(runs
      ? table({
          label: `${at}, computed`,
          heads: [at, ...driven.map(({ inHand }) => inHand.name)],
          rows: pointRows(driven).map(({ name, symbol, cells }) => [`${name} ${symbol}`.trim(), ...cells]),
        })
      : []),
    ...list(
      once([
        ...driven.map(governingText),
        ...driven.map(({ inHand }) => torqueSourceText(inHand, statedMerit)),
        ...driven.map(carriedText),
        ...driven.flatMap(({ point }) => point?.warnings.map(plainMessage) ?? []),
      ]),
    ),
  ];
}

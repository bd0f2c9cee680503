import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { formatUncertain } from "../../../../shared/quantity/format.ts";
import { plainMessage } from "../../../app/plainMessage.ts";
import { AMPERE, NEWTON, WATT } from "../../bench/shownUnits.ts";
import { sureText } from "../../shortlist/resultModel.ts";
import { demandText, legText, legTime, lossesNote, verticalRows } from "../../vehicle/answer/answerText.ts";
import { rangePicture, trackPicture } from "../../vehicle/answer/enduranceCharts.ts";
import { forcePicture, speedText, WAY_WORDS } from "../../vehicle/answer/speedModel.ts";
import { tetherLimitPicture } from "../../vehicle/answer/tetherLimitPicture.ts";
import { AMPERE_HOUR, shownUncertain } from "../../vehicle/answer/units.ts";
import { COMPARED, differenceSentence, differences } from "../../vehicle/compareModel.ts";
import { reachRows } from "../../vehicle/layout/layoutModel.ts";
import { heading, list, once, picture, type ReportBlock, table, text } from "../reportBlocks.ts";
import type { ReportInput } from "../reportInput.ts";

/** Every vehicle of the project, and all beside each other. */
export function vehicleSection({ vehicles }: ReportInput): ReportBlock[] {
  if (vehicles.length === 0) return [text("No vehicle is in this project.")];
  return [
    ...vehicles.flatMap(({ name, answered, gap }) => [
      heading(name),
      ...(answered.state === "answered"
        ? answerBlocks(answered.answer)
        : [text(answered.state === "refused" ? answered.why : gap || "Parts of it are missing, so it has no answer.")]),
    ]),
    ...besideBlocks(vehicles),
  ];
}

function answerBlocks(answer: VehicleAnswer): ReportBlock[] {
  const ahead = answer.motions.find(({ way }) => way === "ahead");
  return [
    text(answer.sentence),
    ...requirementBlocks(answer),
    ...table({
      label: "Each way, with 95 % intervals where the inputs state their doubt",
      heads: ["Way", "Force at rest", "Steady speed", "Current", "Power from the bus", "Bounded by"],
      rows: answer.motions.map((motion) => {
        const bus = motion.atSpeed ?? motion.atRest;
        return [
          WAY_WORDS[motion.way],
          shownUncertain(motion.force, NEWTON),
          speedText(motion),
          shownUncertain(bus?.current ?? null, AMPERE),
          shownUncertain(bus?.power ?? null, WATT),
          bus?.limitedBy.text ?? "–",
        ];
      }),
    }),
    ...(ahead && ahead.curve.length > 0 ? picture(forcePicture(ahead)) : []),
    ...tetherBlocks(answer.tetherLimit),
    ...layoutBlocks(answer),
    ...enduranceBlocks(answer.endurance),
    ...(answer.headings ? [text(answer.headings.sentence)] : []),
    ...verticalBlocks(answer),
    ...(answer.warnings.length > 0 ? [text("To know beside these numbers", true)] : []),
    ...list(once(answer.warnings.map(plainMessage))),
  ];
}

function tetherBlocks(limit: VehicleAnswer["tetherLimit"]): ReportBlock[] {
  if (limit === null) return [];
  return [text(limit.sentence), ...picture(limit.points.some(({ speed }) => speed) ? tetherLimitPicture(limit) : null)];
}

/** Trim, lift, and what is left when a thruster dies. */
function verticalBlocks({ vertical, motions }: VehicleAnswer): ReportBlock[] {
  return [
    text(vertical.sentence),
    ...table({
      label: "Up and down",
      heads: ["What", "How much"],
      rows: verticalRows(vertical, motions).map(({ name, value }) => [name, value]),
    }),
    text(vertical.withoutPower.text),
    ...(vertical.losses.length > 0 ? [text("With one thruster lost", true), text(lossesNote(motions))] : []),
    ...list(vertical.losses.map(({ sentence }) => sentence)),
  ];
}

function requirementBlocks({ sentence: told, requirement: check }: VehicleAnswer): ReportBlock[] {
  if (check === null) return [text("Nothing is asked of it.")];
  return [
    // Where the answer ends with this sentence, it is not said again.
    ...(told.includes(check.sentence) ? [] : [text(check.sentence, true)]),
    ...table({
      label: "What it must do",
      heads: ["Asked", "Met", "How sure", "In words", "What bounds it"],
      rows: check.demands.map((demand) => [
        demand.name,
        demand.met ? (demand.certain ? "yes" : "by the best estimate") : "no",
        sureText(demand.probabilityDrawn ?? demand.probability),
        demandText(demand),
        demand.limitedBy?.text ?? "–",
      ]),
    }),
  ];
}

function layoutBlocks({ layout }: VehicleAnswer): ReportBlock[] {
  return [
    ...table({
      label: "What the thrusters can push and turn together, with 95 % intervals",
      heads: ["Motion", "Way", "Greatest", "Within the bus current", "Bounded by"],
      rows: reachRows(layout).map(({ axis, way, greatest, withinBus, bounds }) => [
        axis,
        way,
        greatest,
        withinBus || "–",
        bounds,
      ]),
    }),
    { kind: "outlines", outlines: layout.outlines },
  ];
}

function enduranceBlocks(endurance: VehicleAnswer["endurance"]): ReportBlock[] {
  if (endurance === null) return [text("The charge of the pack is not stated, so no time can be told.")];
  const { mission, speeds } = endurance;
  return [
    text(mission !== null && speeds !== null ? mission.sentence : endurance.sentence),
    ...(mission === null
      ? []
      : [
          ...table({
            label: "The mission, leg by leg, with 95 % intervals",
            heads: ["Leg", "Time", "Mean power", "Greatest current", "Charge", "How it went"],
            rows: mission.legs.map((leg) => [
              leg.name,
              legTime(leg),
              shownUncertain(leg.power, WATT),
              shownUncertain(leg.greatestCurrent, AMPERE),
              shownUncertain(leg.charge, AMPERE_HOUR),
              legText(leg),
            ]),
          }),
          ...picture(mission.track.length > 1 ? trackPicture(mission) : null),
        ]),
    ...(speeds === null ? [] : [text(speeds.sentence), ...picture(rangePicture(speeds))]),
    ...list(endurance.warnings.map(plainMessage)),
  ];
}

function besideBlocks(vehicles: ReportInput["vehicles"]): ReportBlock[] {
  if (vehicles.length < 2) return [];
  return [
    heading("The vehicles beside each other"),
    ...differenceBlocks(vehicles),
    ...table({
      label: "Each in its own scenario",
      heads: ["", ...vehicles.map(({ name }) => name)],
      rows: COMPARED.map(({ name, cell }) => [
        name,
        ...vehicles.map(({ answered }) => (answered.state === "answered" ? cell(answered.answer) : "no answer")),
      ]),
    }),
  ];
}

/** What differs from the first vehicle beyond its doubt. */
function differenceBlocks([first, ...others]: ReportInput["vehicles"]): ReportBlock[] {
  if (first?.answered.state !== "answered") return [];
  const from = first.answered;
  return others.flatMap(({ name, answered }) =>
    answered.state === "answered" ? [text(differenceSentence(first.name, name, differences(from, answered)))] : [],
  );
}

/** What vehicle answers take for granted, and the drag they rest on. */
export function vehicleGrounds({ vehicles }: ReportInput): ReportBlock[] {
  return vehicles.flatMap(({ name, answered }) => {
    if (answered.state !== "answered") return [];
    const { drag, grounds, assumptions, endurance, tetherLimit, converged } = answered.answer;
    const ways = [
      ["ahead", drag.surge?.forward],
      ["astern", drag.surge?.astern],
      ["sideways", drag.sway],
      ["down", drag.heave?.down],
      ["up", drag.heave?.up],
    ] as const;
    return [
      text(name, true),
      ...list(
        once([
          ...ways.flatMap(([way, one]) =>
            one
              ? [`Drag ${way}: C_D A ${formatUncertain(one.dragArea, { symbol: "m²", factor: 1 })}, ${one.from}.`]
              : [],
          ),
          ...grounds.map(({ drive, text: ground }) => `${drive}: ${ground}`),
          ...assumptions,
          ...(endurance?.assumptions ?? []),
          ...(tetherLimit ? [tetherLimit.assumption] : []),
          ...(converged ? [] : ["A search did not come to its end; treat the last digits with care."]),
        ]),
      ),
    ];
  });
}

import { computed, signal } from "@preact/signals";
import { describeFluid } from "../../../shared/fluid/parseFluid.ts";
import type { KeptShortlist } from "../../../shared/model/shortlistStored.ts";
import { formatQuantity } from "../../../shared/quantity/format.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { ask } from "../../api/request.ts";
import { listShortlists, readShortlist } from "../../api/shortlists.ts";
import { momentText } from "../../app/momentText.ts";
import { reductions } from "../../app/reductions.ts";
import { openProjectId, parts, project, runs } from "../../app/session.ts";
import { tell } from "../../app/toast.ts";
import { counts } from "../../app/words.ts";
import { METRE_PER_SECOND, WATT } from "../bench/shownUnits.ts";
import { throttlePicture } from "../drive/driveCharts.ts";
import * as chosen from "../drive/driveChoices.ts";
import { answer as driveAnswer, driven } from "../drive/driveState.ts";
import { overview } from "../overview/overviewState.ts";
import { closenessRows } from "../theory/closeness/closenessModel.ts";
import { shownName } from "../theory/predictions/shownPrediction.ts";
import * as theory from "../theory/theoryState.ts";
import { overlayChart } from "../variants/variantsChart.ts";
import { variantsAnswer } from "../variants/variantsModel.ts";
import { againstBaseline, baselineBecause, claimAgainstBaseline, groups, spreads } from "../variants/variantsState.ts";
import { besideEachOther } from "../vehicle/besides.ts";
import type { ReportInput } from "./reportInput.ts";
import { reportModel } from "./reportModel.ts";

/** Sections that a person does not want, by id. */
export const leftOut = signal<ReadonlySet<string>>(new Set());

export function wantSection(id: string, wanted: boolean): void {
  const left = new Set(leftOut.value);
  if (wanted) left.delete(id);
  else left.add(id);
  leftOut.value = left;
}

const lastShortlist = signal<KeptShortlist | null>(null);
const program = signal("Bollard Bench");
const madeAt = signal("");

/** Reads what a report needs and no screen has read: the shortlist kept last, the program, and the time. */
export async function readForReport(): Promise<void> {
  madeAt.value = momentText(new Date());
  try {
    program.value = (await ask<{ program: string }>("/api/health")).program;
    const last = (await listShortlists(openProjectId())).at(-1);
    lastShortlist.value = last === undefined ? null : (await readShortlist(openProjectId(), last.id)).document;
  } catch (thrown) {
    tell({ tone: "problem", text: sentenceOf(thrown) });
  }
}

const variantsInput = computed((): ReportInput["variants"] => ({
  answer: variantsAnswer(againstBaseline.value, groups.value),
  groups: groups.value,
  comparisons: againstBaseline.value,
  spreads: spreads.value,
  claim: claimAgainstBaseline.value,
  baselineBecause: baselineBecause.value,
  picture: overlayChart(groups.value),
}));

const theoryInput = computed((): ReportInput["theory"] => {
  const { value: inputs } = theory.benchInputs;
  const yardstick = theory.yardstick.value;
  return {
    answer: theory.answer.value,
    beside: theory.beside.value,
    heads: [
      "Variant",
      "Share of the ideal",
      "Thrust of 100 W at the shaft",
      `Thrust over ${yardstick ? shownName(yardstick) : "a prediction"}`,
    ],
    rows: inputs === null ? [] : closenessRows(theory.measured.value, yardstick, inputs),
    picture: theory.powerChart.value,
  };
});

const driveInput = computed((): ReportInput["drive"] => {
  const named = [
    chosen.motor.value,
    chosen.controller.value,
    chosen.gear.value,
    chosen.pack.value,
    chosen.tether.value,
  ];
  const names = named.flatMap((part) => (part === undefined ? [] : [part.document.name]));
  return {
    answer: driveAnswer.value,
    throttle: chosen.throttle.value,
    chosen: [
      ...(names.length === 0 ? [] : [`Parts: ${names.join(", ")}.`]),
      `${counts(chosen.thrusters.value, "thruster")} on the supply, hotel load ${formatQuantity(chosen.hotelPower.value, WATT)}, in ${describeFluid(chosen.fluid.value)}.`,
      chosen.advanceSpeed.value === 0
        ? "At rest in the water."
        : `At ${formatQuantity(chosen.advanceSpeed.value, METRE_PER_SECOND)} through the water.`,
    ],
    statedMerit: chosen.statedMerit.value,
    driven: driven.value,
    picture: throttlePicture(driven.value, chosen.throttle.value, "thrust"),
  };
});

export const reportInput = computed(
  (): ReportInput => ({
    project: project.value!.document,
    parts: parts.value,
    runs: runs.value,
    reductionOf: (id) => reductions.value.get(id),
    overview: overview.value,
    variants: variantsInput.value,
    theory: theoryInput.value,
    drive: driveInput.value,
    shortlist: lastShortlist.value,
    vehicles: besideEachOther.value,
    program: program.value,
    madeAt: madeAt.value,
  }),
);

export const report = computed(() => reportModel(reportInput.value, leftOut.value));

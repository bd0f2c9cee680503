import { type ReadonlySignal, useSignalEffect } from "@preact/signals";
import type { ComponentType } from "preact";
import { Fold } from "../../app/Fold.tsx";
import { isReducing, needReductions } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { SectionList } from "../../app/SectionList.tsx";
import { runs } from "../../app/session.ts";
import { VariantChecks } from "../variants/VariantChecks.tsx";
import { BladePanel } from "./blade/BladePanel.tsx";
import { bladeNote } from "./blade/bladeState.ts";
import { CarryOverPanel, carryOverNote } from "./carryOver/CarryOverPanel.tsx";
import { ClosenessPanel } from "./closeness/ClosenessPanel.tsx";
import { EstimatePanel } from "./EstimatePanel.tsx";
import { FinishPanel, finishNote } from "./finish/FinishPanel.tsx";
import { LossesPanel, lossesNote } from "./losses/LossesPanel.tsx";
import { MethodLinks } from "./methods/MethodLinks.tsx";
import { MethodsPanel } from "./methods/MethodsPanel.tsx";
import type { MethodId } from "./methods/methods.data.ts";
import { METHODS_CARD } from "./methods/wantedMethod.ts";
import { Pictures } from "./Pictures.tsx";
import { PitchPanel } from "./pitch/PitchPanel.tsx";
import { pitchNote } from "./pitch/pitchState.ts";
import { PredictionsPanel } from "./predictions/PredictionsPanel.tsx";
import "./theory.css";
import { fluidProblem } from "./theoryFluid.ts";
import { answer, beside, estimateNote, measured } from "./theoryState.ts";
import { WaterPanel, waterNote } from "./water/WaterPanel.tsx";

interface Card {
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
  /** What stays to be read while it is folded; nothing that takes long to compute. */
  readonly note?: ReadonlySignal<string>;
  readonly open?: boolean;
  /** The models behind its numbers. */
  readonly methods?: readonly MethodId[];
}

/** The answer first, then why, then what to do about it, then how it is known. */
const CARDS: readonly Card[] = [
  {
    id: "theory-closeness",
    title: "How close each variant comes",
    Body: ClosenessPanel,
    open: true,
    methods: ["momentum", "series"],
  },
  {
    id: "theory-predictions",
    title: "Predictions laid over the measurements",
    Body: PredictionsPanel,
    open: true,
    methods: ["series", "nozzle", "blades", "section", "speed"],
  },
  {
    id: "theory-losses",
    title: "Where the power goes",
    Body: LossesPanel,
    note: lossesNote,
    methods: ["losses", "momentum"],
  },
  {
    id: "theory-finish",
    title: "What the finish does to the blade",
    Body: FinishPanel,
    note: finishNote,
    methods: ["finish", "section"],
  },
  {
    id: "theory-blade",
    title: "Along the blade, and does it bear the load",
    Body: BladePanel,
    note: bladeNote,
    methods: ["blades", "section", "strength"],
  },
  {
    id: "theory-water",
    title: "What the water allows",
    Body: WaterPanel,
    note: waterNote,
    methods: ["cavitation", "air"],
  },
  {
    id: "theory-carry",
    title: "Carried to the working water",
    Body: CarryOverPanel,
    note: carryOverNote,
    methods: ["carry"],
  },
  {
    id: "theory-pitch",
    title: "A good pitch for a duty",
    Body: PitchPanel,
    note: pitchNote,
    methods: ["pitch", "series", "nozzle"],
  },
  {
    id: "theory-estimate",
    title: "What follows from a stated merit",
    Body: EstimatePanel,
    note: estimateNote,
    methods: ["momentum"],
  },
  { id: METHODS_CARD, title: "How each number is computed", Body: MethodsPanel },
];
const SECTIONS = CARDS.map(({ id, title }) => ({ id, label: title }));

export default function TheoryView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  const known = measured.value.some((variant) => variant.staticMerit !== null);
  return (
    <Screen
      question="How close to the ideal is it?"
      answer={fluidProblem.value || answer.value}
      tone={fluidProblem.value ? "problem" : known ? "known" : "open"}
      isBusy={isReducing.value}
      basis={<Basis />}
      picture={<Pictures />}
    >
      <div class="theory-layout">
        <VariantChecks />
        <SectionList label="Sections of this screen" sections={SECTIONS} />
        {CARDS.map((card) => (
          <FoldedCard key={card.id} card={card} />
        ))}
      </div>
    </Screen>
  );
}

function Basis() {
  return (
    <>
      {beside.value !== "" && <p>{beside.value}</p>}
      <p>
        ± and ranges are 95{"\u202f"}% intervals of what was measured. A prediction is as good as what it is made from.
      </p>
    </>
  );
}

/** A component of its own, so that a note that changes draws its own card again and no other. */
function FoldedCard({ card: { id, title, Body, note, open = false, methods } }: { readonly card: Card }) {
  return (
    <Fold id={id} title={title} note={note?.value} open={open} lazy>
      <Body />
      {methods && <MethodLinks ids={methods} />}
    </Fold>
  );
}

import { useSignalEffect } from "@preact/signals";
import type { ComponentType } from "preact";
import { Caution } from "../../app/Caution.tsx";
import { Fold } from "../../app/Fold.tsx";
import { isReducing, needReductions } from "../../app/reductions.ts";
import { addressOf } from "../../app/route.ts";
import { Screen } from "../../app/Screen.tsx";
import { SectionList } from "../../app/SectionList.tsx";
import { runs } from "../../app/session.ts";
import { BenchPanel } from "./bench/BenchPanel.tsx";
import { ChosenParts } from "./ChosenParts.tsx";
import { ControlPanel } from "./control/ControlPanel.tsx";
import { DoubtPanel } from "./doubt/DoubtPanel.tsx";
import "./drive.css";
import { fluidProblem, motor } from "./driveChoices.ts";
import { propellers } from "./drivePropellers.ts";
import { answer, driven } from "./driveState.ts";
import { Flow } from "./Flow.tsx";
import { LimitsPanel } from "./LimitsPanel.tsx";
import { Pictures } from "./Pictures.tsx";
import { PointTable } from "./PointTable.tsx";
import { RestsOn } from "./RestsOn.tsx";
import { WirePanel } from "./wire/WirePanel.tsx";

interface Card {
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
  readonly open?: boolean;
}

/** The numbers first, then what bounds them, then what to do with them, then what they rest on. */
const CARDS: readonly Card[] = [
  { id: "drive-parts", title: "On the vehicle", Body: ChosenParts, open: true },
  { id: "drive-table", title: "Numbers at this throttle", Body: PointTable, open: true },
  { id: "drive-flow", title: "Where the watts go", Body: Flow, open: true },
  { id: "drive-limits", title: "What bounds it", Body: LimitsPanel, open: true },
  { id: "drive-bench", title: "Against the bench", Body: BenchPanel },
  { id: "drive-control", title: "Table for a controller", Body: ControlPanel },
  { id: "drive-wire", title: "Wire and fuse", Body: WirePanel },
  { id: "drive-doubt", title: "Where the doubt comes from", Body: DoubtPanel },
  { id: "drive-rests", title: "What it rests on", Body: RestsOn, open: true },
];
const SECTIONS = CARDS.map(({ id, title }) => ({ id, label: title }));

export default function DriveView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  const problem = fluidProblem.value || driven.value.find((one) => one.problem !== "")?.problem || "";
  const ready = driven.value.some(({ point }) => point !== null);
  return (
    <Screen
      question="What will it pull in the water?"
      answer={fluidProblem.value || answer.value}
      tone={ready ? "known" : problem ? "problem" : "open"}
      isBusy={isReducing.value}
      basis={<Basis />}
      picture={driven.value.length > 0 && <Pictures />}
    >
      {propellers.value.length === 0 && (
        <p class="hint">
          No variant has a thrust coefficient yet. <a href={addressOf("bench")}>Reduce a run on the Bench screen</a> and
          give it a variant, or type coefficients below.
        </p>
      )}
      <SectionList label="Sections of this screen" sections={SECTIONS} />
      {CARDS.map(({ id, title, Body, open = false }) => (
        <Fold key={id} id={id} title={title} open={open} lazy>
          <Body />
        </Fold>
      ))}
      <Caution about="drive" />
    </Screen>
  );
}

function Basis() {
  const stated = motor.value?.document.uncertainties
    ? "the constants of the motor and whatever else states its doubt"
    : "whatever part states its doubt";
  return (
    <p>
      ± is the half-width of the 95{"\u202f"}% interval that follows from the coefficients, and from {stated}.
    </p>
  );
}

import { useSignalEffect } from "@preact/signals";
import type { ComponentType } from "preact";
import type { VehicleAnswer } from "../../../shared/model/vehicle/vehicleAnswer.ts";
import { Caution } from "../../app/Caution.tsx";
import { Fold } from "../../app/Fold.tsx";
import { plainMessage } from "../../app/plainMessage.ts";
import { isReducing, needReductions } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { SectionList } from "../../app/SectionList.tsx";
import { runs } from "../../app/session.ts";
import { type WarningItem, Warnings } from "../../app/Warnings.tsx";
import { counts } from "../../app/words.ts";
import { ChangesPanel } from "./answer/ChangesPanel.tsx";
import { DrawsButton } from "./answer/DrawsButton.tsx";
import { EndurancePanel } from "./answer/EndurancePanel.tsx";
import { HeadingsPanel } from "./answer/HeadingsPanel.tsx";
import { RequirementPanel } from "./answer/RequirementPanel.tsx";
import { RestsOnPanel } from "./answer/RestsOnPanel.tsx";
import { SpeedPanel } from "./answer/SpeedPanel.tsx";
import { TetherPanel } from "./answer/TetherPanel.tsx";
import { VerticalPanel } from "./answer/VerticalPanel.tsx";
import { BuildBar } from "./build/BuildBar.tsx";
import { BUILD_CARDS } from "./build/buildCards.ts";
import { gapText } from "./build/buildModel.ts";
import { assembled } from "./build/buildState.ts";
import { ComparePanel } from "./ComparePanel.tsx";
import { LayoutPanel } from "./layout/LayoutPanel.tsx";
import { SaveVehicle } from "./SaveVehicle.tsx";
import { ScenarioSliders } from "./ScenarioSliders.tsx";
import "./vehicle.css";
import "./stackedRows.css";
import { answered, followAddress, isBehind } from "./vehicleState.ts";

interface Card {
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
  readonly open?: boolean;
}

/** A card that needs an answer to show. */
const of = (Panel: ComponentType<{ readonly answer: VehicleAnswer }>) =>
  function Answered() {
    const now = answered.value;
    return now.state === "answered" ? <Panel answer={now.answer} /> : null;
  };

/** What it does first, then how, then what it is made of. */
const ANSWER_CARDS: readonly Card[] = [
  { id: "vehicle-requirement", title: "What it must do: met?", Body: of(Requirement), open: true },
  { id: "vehicle-speed", title: "How fast", Body: of(SpeedPanel), open: true },
  { id: "vehicle-changes", title: "What would make it faster", Body: of(ChangesPanel) },
  {
    id: "vehicle-headings",
    title: "In a current from any side",
    Body: of(({ answer }) => <HeadingsPanel headings={answer.headings} />),
  },
  {
    id: "vehicle-tether",
    title: "The tether",
    Body: of(({ answer }) => <TetherPanel tether={answer.tether} limit={answer.tetherLimit} />),
  },
  { id: "vehicle-vertical", title: "Up and down", Body: of(VerticalPanel) },
  {
    id: "vehicle-endurance",
    title: "How long",
    Body: of(({ answer }) => <EndurancePanel endurance={answer.endurance} />),
  },
  { id: "vehicle-layout", title: "What the thrusters can push and turn", Body: of(LayoutPanel) },
  { id: "vehicle-compare", title: "Beside the other vehicles", Body: ComparePanel },
];
const LAST_CARDS: readonly Card[] = [{ id: "vehicle-rests", title: "What it rests on", Body: of(RestsOnPanel) }];

export default function VehicleView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  useSignalEffect(followAddress);
  const now = answered.value;
  const hasAnswer = now.state === "answered";
  const cards = [...(hasAnswer ? ANSWER_CARDS : []), ...BUILD_CARDS, ...(hasAnswer ? LAST_CARDS : [])];
  return (
    <Screen
      question="What will the vehicle do?"
      answer={answerText()}
      tone={
        hasAnswer
          ? now.answer.requirement?.met === false
            ? "problem"
            : "known"
          : now.state === "refused"
            ? "problem"
            : "open"
      }
      isBusy={isReducing.value || isBehind.value}
      basis={<Basis />}
      actions={
        <>
          <BuildBar />
          <SaveVehicle />
        </>
      }
      picture={<ScenarioSliders />}
    >
      <SectionList label="Sections of this screen" sections={cards.map(({ id, title }) => ({ id, label: title }))} />
      {hasAnswer && <ToKnow items={now.answer.warnings} />}
      {hasAnswer && isBehind.value && <Behind />}
      {cards.map(({ id, title, Body, open = false }) => (
        <Fold key={id} id={id} title={title} open={open} lazy>
          <Body />
        </Fold>
      ))}
      <Caution about="drive" />
    </Screen>
  );
}

/** What stands below is of a moment ago. */
function Behind() {
  return (
    <p class="vehicle-behind">
      <progress aria-label="Working out the change" />
      These are the numbers before the change; the new ones are being worked out.
    </p>
  );
}

/** Folded: there are many, and most hold for every answer of this vehicle. */
function ToKnow({ items: all }: { readonly items: readonly WarningItem[] }) {
  const items = toldOnce(all);
  if (items.length === 0) return null;
  return (
    <details>
      <summary>{`${counts(items.length, "thing")} to know beside these numbers`}</summary>
      <Warnings items={items} />
    </details>
  );
}

/** What holds for two directions of a drag, or for two drives, is one thing to know. */
const toldOnce = (items: readonly WarningItem[]) => [
  ...new Map(items.map((item) => [plainMessage(item), item])).values(),
];

function answerText(): string {
  const now = answered.value;
  if (now.state === "answered") return now.answer.sentence;
  if (now.state === "refused") return now.why;
  const made = assembled.value;
  if (made === null) return "Add a vehicle: its thrusters, its drag and its pack, and see what it does.";
  return "problems" in made && !isReducing.value ? gapText(made.problems) : "Working it out …";
}

function Basis() {
  return (
    <p>
      ± is the half-width of the 95{"\u202f"}% interval that follows from drag, coefficients, parts and current as far
      as they state their doubt.
    </p>
  );
}

function Requirement({ answer }: { readonly answer: VehicleAnswer }) {
  return (
    <>
      <RequirementPanel check={answer.requirement} />
      {answer.requirement !== null && <DrawsButton />}
    </>
  );
}

import { useSignalEffect } from "@preact/signals";
import type { ComponentType } from "preact";
import { Caution } from "../../app/Caution.tsx";
import { Fold } from "../../app/Fold.tsx";
import { isReducing, needReductions } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { SectionList } from "../../app/SectionList.tsx";
import { runs } from "../../app/session.ts";
import { Warnings } from "../../app/Warnings.tsx";
import { BoxForm } from "./BoxForm.tsx";
import { DesignPanel } from "./design/DesignPanel.tsx";
import { ChartGroupOfFronts } from "./Fronts.tsx";
import { KeptPanel } from "./KeptPanel.tsx";
import { RequirementForm, WeightSliders } from "./RequirementForm.tsx";
import { Results } from "./Results.tsx";
import { SearchBar } from "./SearchBar.tsx";
import { search, shown } from "./searchState.ts";
import "./shortlist.css";
import { PartTallies, WhyNot } from "./WhyNot.tsx";

interface Card {
  readonly id: string;
  readonly title: string;
  readonly Body: ComponentType;
  readonly open?: boolean;
  /** Has something to say only once there is a result. */
  readonly needsResult?: boolean;
}

const CARDS: readonly Card[] = [
  { id: "shortlist-results", title: "Those that meet it", Body: ShownResults, open: true, needsResult: true },
  { id: "shortlist-why", title: "Why the others fail", Body: ShownWhyNot, open: true, needsResult: true },
  { id: "shortlist-fronts", title: "Not beaten in both", Body: ShownFronts, needsResult: true },
  { id: "shortlist-parts", title: "What became of each part", Body: ShownTallies, needsResult: true },
  { id: "shortlist-need", title: "What is needed", Body: RequirementForm, open: true },
  { id: "shortlist-weights", title: "What counts for more", Body: WeightSliders },
  { id: "shortlist-box", title: "What there is to choose from", Body: BoxForm },
  { id: "shortlist-design", title: "Design a propeller instead", Body: DesignPanel },
  { id: "shortlist-kept", title: "Earlier searches", Body: KeptPanel },
];

export default function ShortlistView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  const result = shown.value;
  const cards = CARDS.filter(({ needsResult }) => !needsResult || result !== null);
  const failed = search.value.state === "failed" ? search.value.why : "";
  return (
    <Screen
      question="Which parts make the thruster I need?"
      answer={failed || (result?.result.answer ?? "Say what is needed, then search the parts that you keep.")}
      tone={failed ? "problem" : result === null ? "open" : result.result.counts.meeting > 0 ? "known" : "problem"}
      isBusy={isReducing.value}
      basis={
        <p>Every motor with every controller, supply, gear and propeller is run at its limits in the working water.</p>
      }
      picture={<SearchBar />}
    >
      <SectionList label="Sections of this screen" sections={cards.map(({ id, title }) => ({ id, label: title }))} />
      {result !== null && <Warnings items={result.result.warnings} />}
      {cards.map(({ id, title, Body, open = false }) => (
        <Fold key={id} id={id} title={title} open={open} lazy>
          <Body />
        </Fold>
      ))}
      <Caution about="drive" />
    </Screen>
  );
}

function ShownResults() {
  return shown.value && <Results result={shown.value.result} />;
}

function ShownWhyNot() {
  return shown.value && <WhyNot result={shown.value.result} />;
}

function ShownFronts() {
  return shown.value && <ChartGroupOfFronts fronts={shown.value.result.fronts} />;
}

function ShownTallies() {
  return shown.value && <PartTallies result={shown.value.result} />;
}

import { useSignalEffect } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { bundleAddress } from "../../api/bundles.ts";
import { isReducing, needReductions } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { openProjectId, project, runs } from "../../app/session.ts";
import { isAnswering, lookBesides } from "../vehicle/besides.ts";
import { ReportSheet } from "./ReportSheet.tsx";
import { saveReport } from "./reportFile.ts";
import { REPORT_SECTIONS, reportAnswer } from "./reportModel.ts";
import { leftOut, readForReport, report, reportInput, wantSection } from "./reportState.ts";
import "./reportSheet.css";
import "./report.css";

export default function ReportView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  useEffect(() => void readForReport(), []);
  useEffect(lookBesides, []);
  const { name } = project.value!.document;
  // Each run that arrives would change everything that rests on it: the report is made once, when all are there.
  const input = isReducing.value || isAnswering.value ? null : reportInput.value;
  return (
    <Screen
      question="What goes on paper?"
      answer={reportAnswer(input)}
      tone={input === null ? "open" : "known"}
      isBusy={input === null}
      actions={<Acts name={name} isReady={input !== null} />}
      picture={<SectionChoice />}
    >
      {input && (
        <ReportSheet name={name} made={`Made by ${input.program} on ${input.madeAt}.`} sections={report.value} />
      )}
    </Screen>
  );
}

function Acts({ name, isReady }: { readonly name: string; readonly isReady: boolean }) {
  return (
    <>
      <button type="button" class="primary" disabled={!isReady} onClick={() => print()}>
        Print the report
      </button>
      <button
        type="button"
        disabled={!isReady}
        onClick={() => {
          const sheet = document.getElementById("report-sheet");
          if (sheet) saveReport(name, sheet);
        }}
      >
        Save the report as one page
      </button>
      <a href={bundleAddress(openProjectId())} download>
        Save the project as one file
      </a>
    </>
  );
}

function SectionChoice() {
  return (
    <fieldset class="report-choice">
      <legend>Sections</legend>
      {REPORT_SECTIONS.map(({ id, title }) => (
        <label key={id}>
          <input
            type="checkbox"
            checked={!leftOut.value.has(id)}
            onChange={(event) => wantSection(id, event.currentTarget.checked)}
          />{" "}
          {title}
        </label>
      ))}
    </fieldset>
  );
}

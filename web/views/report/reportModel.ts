import type { ReportBlock } from "./reportBlocks.ts";
import type { ReportInput } from "./reportInput.ts";
import { cautionsSection, provenanceSection, reproduceSection, trustSection } from "./sections/closingSections.ts";
import { driveSection } from "./sections/driveSection.ts";
import { answersSection, projectSection } from "./sections/projectSection.ts";
import { qualitySection, runsSection } from "./sections/runsSection.ts";
import { shortlistSection } from "./sections/shortlistSection.ts";
import { theorySection, variantsSection } from "./sections/variantsSection.ts";
import { vehicleSection } from "./sections/vehicleSection.ts";

interface SectionOfReport {
  readonly id: string;
  readonly title: string;
  readonly blocks: (input: ReportInput) => ReportBlock[];
}

/** The sections of a report in their order. */
export const REPORT_SECTIONS: readonly SectionOfReport[] = [
  { id: "project", title: "The project", blocks: projectSection },
  { id: "cautions", title: "Before you switch anything on", blocks: cautionsSection },
  { id: "answers", title: "Answers", blocks: answersSection },
  { id: "variants", title: "Variants and their comparison", blocks: variantsSection },
  { id: "theory", title: "How close to the ideal", blocks: theorySection },
  { id: "drive", title: "The drive that was chosen", blocks: driveSection },
  { id: "shortlist", title: "The shortlist kept last", blocks: shortlistSection },
  { id: "vehicle", title: "What the vehicles do", blocks: vehicleSection },
  { id: "runs", title: "Runs, recipes and instruments", blocks: runsSection },
  { id: "quality", title: "Checks and warnings of the runs", blocks: qualitySection },
  { id: "trust", title: "Uncertainty and assumptions", blocks: trustSection },
  { id: "provenance", title: "Where the numbers come from", blocks: provenanceSection },
  { id: "reproduce", title: "How to make the numbers again", blocks: reproduceSection },
];

export interface ReportSection {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly ReportBlock[];
}

/** The sections that are wanted, numbered from 1 in the order they stand. */
export function reportModel(input: ReportInput, left: ReadonlySet<string>): ReportSection[] {
  return REPORT_SECTIONS.filter(({ id }) => !left.has(id)).map(({ id, title, blocks }, at) => ({
    id,
    title: `${at + 1} ${title}`,
    blocks: blocks(input),
  }));
}

/** The one sentence over the screen; null: what the report is made from is not there yet. */
export function reportAnswer(input: ReportInput | null): string {
  if (input === null) return "The runs are still being worked out; the report is made when all of them are.";
  const { project, runs, vehicles } = input;
  if (runs.length === 0 && vehicles.length === 0)
    return `“${project.name}” holds no run and no vehicle yet, so there is little to report.`;
  return `The report of “${project.name}” is ready: print it, or save it as one page that opens without the workbench.`;
}

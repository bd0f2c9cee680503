import type { Run } from "../../../shared/model/run.ts";
import { parts } from "../../app/session.ts";
import { SelectField } from "../../forms/SelectField.tsx";
import { NoteField } from "./NoteField.tsx";
import { partChoices } from "./partChoices.ts";
import { dayProblem, tagsIn, tagsProblem, withStated } from "./runStatements.ts";

interface RunCircumstancesProps {
  readonly run: Run;
  readonly onChange: (label: string, change: (run: Run) => Run) => Promise<unknown>;
}

/** Pack, day and tags: what may go with a variant unseen, and what runs are grouped by. */
export function RunCircumstances({ run, onChange }: RunCircumstancesProps) {
  const state = <K extends "packId" | "day" | "tags">(key: K, title: string, value: Run[K] | undefined) =>
    onChange(`Stated the ${title} of ${run.name}`, (now) => withStated(now, key, value));
  return (
    <>
      <SelectField
        label="Pack that fed the stand"
        value={run.packId ?? ""}
        options={partChoices(parts.value.packs, "Not stated")}
        help="A variant that was always run on the fresher pack is told when runs are compared."
        onChange={(id) => state("packId", "pack", id || undefined)}
      />
      <NoteField
        label="Day of the run"
        value={run.day ?? ""}
        help="Year, month, day: 2026-05-17."
        problemOf={dayProblem}
        onCommit={(day) => state("day", "day", day || undefined)}
      />
      <NoteField
        label="Tags"
        value={(run.tags ?? []).join(", ")}
        help="Words to find and to group runs by, with commas between."
        problemOf={tagsProblem}
        onCommit={(text) => {
          const tags = tagsIn(text);
          return state("tags", "tags", tags.length > 0 ? tags : undefined);
        }}
      />
    </>
  );
}

import { useMemo, useState } from "preact/hooks";
import type { PartInput } from "../../api/client.ts";
import { counts } from "../../app/words.ts";
import { FormButtons } from "../../forms/FormButtons.tsx";
import { type FieldGroup, groupsOf } from "./fieldGroups.ts";
import { MotorQuestion } from "./MotorQuestion.tsx";
import { type MotorQuestionModel, motorQuestion } from "./motorQuestion.ts";
import { PartInputField } from "./PartInputField.tsx";
import { type Draft, documentOf, draftOf, draftProblems } from "./partDraft.ts";
import type { PartField } from "./partFields.ts";
import type { FormKind } from "./partsModel.ts";

export interface PartFormProps<K extends FormKind> {
  readonly kind: K;
  /** The part to change; null for a new one. */
  readonly part: Readonly<Record<string, unknown>> | null;
  /** Supply that a motor is judged at, V. */
  readonly voltage: number | undefined;
  readonly onSave: (document: PartInput<K>) => void;
  readonly onCancel: () => void;
}

/** The form of a part, drawn from its schema. Implausible constants of a motor are asked before they are stored. */
export function PartForm<K extends FormKind>({ kind, part, voltage, onSave, onCancel }: PartFormProps<K>) {
  const groups = useMemo(() => groupsOf(kind), [kind]);
  const fields = useMemo(() => groups.flatMap((group) => group.fields), [groups]);
  const [draft, setDraft] = useState(() => draftOf(fields, part));
  const [unread, setUnread] = useState<Readonly<Record<string, string>>>({});
  const [tried, setTried] = useState(false);
  const [question, setQuestion] = useState<MotorQuestionModel | null>(null);
  const problems = { ...draftProblems(fields, draft), ...unread };

  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (Object.keys(problems).length > 0) return;
    const document = documentOf<K>(fields, draft, part);
    const asked = kind === "motors" ? motorQuestion(document, part, voltage) : null;
    if (asked === null) onSave(document);
    else setQuestion(asked);
  };
  if (question)
    return (
      <MotorQuestion
        question={question}
        onAnswer={(document) => onSave(document as PartInput<K>)}
        onBack={() => setQuestion(null)}
      />
    );
  const shared = { draft, problems: tried ? problems : {} };
  return (
    <form class="part-form" onSubmit={submit} noValidate>
      {groups.map((group) => (
        <Group
          key={group.title}
          group={group}
          {...shared}
          onChange={(key, value) => setDraft((now) => ({ ...now, [key]: value }))}
          onUnread={(key, message) => setUnread((now) => withProblem(now, key, message))}
        />
      ))}
      <FormButtons onCancel={onCancel} gap={tried ? gapOf(Object.keys(problems).length) : ""} />
    </form>
  );
}

interface GroupProps {
  readonly group: FieldGroup;
  readonly draft: Draft;
  /** What is wrong, by field; empty until it was tried to save. */
  readonly problems: Readonly<Record<string, string>>;
  readonly onChange: (key: string, value: Draft[string]) => void;
  readonly onUnread: (key: string, message: string | null) => void;
}

/** The usual fields stand open; the others fold away under a title that says how many are filled in. */
function Group({ group: { title, fields }, draft, problems, onChange, onUnread }: GroupProps) {
  const [unfolded, setUnfolded] = useState(false);
  const inside = (
    <div class="form-grid">
      {fields.map((field) => (
        <PartInputField
          key={field.key}
          field={field}
          value={draft[field.key] ?? null}
          problem={problems[field.key] ?? null}
          onChange={(value) => onChange(field.key, value)}
          onUnread={(message) => onUnread(field.key, message)}
        />
      ))}
    </div>
  );
  if (title === "") return inside;
  const filled = fields.filter(({ key }) => isFilled(draft[key])).length;
  const wrong = fields.some(({ key }) => problems[key] !== undefined);
  return (
    <details class="part-group" open={unfolded || wrong} onToggle={(event) => setUnfolded(event.currentTarget.open)}>
      <summary>
        {title}
        {filled > 0 && <span class="muted"> {counts(filled, "value")}</span>}
      </summary>
      {inside}
    </details>
  );
}

const isFilled = (value: Draft[string] | undefined) =>
  value !== null && value !== undefined && value !== "" && value !== false;

function gapOf(problems: number): string {
  if (problems === 0) return "";
  return problems === 1 ? "One field needs a look." : `${problems} fields need a look.`;
}

function withProblem(now: Readonly<Record<PartField["key"], string>>, key: string, message: string | null) {
  const { [key]: _gone, ...rest } = now;
  return message === null ? rest : { ...rest, [key]: message };
}

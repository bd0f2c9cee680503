import { useMemo, useState } from "preact/hooks";
import { type Instrument, InstrumentRole, METHODS_OF } from "../../../shared/model/instrument.ts";
import { Warnings } from "../../app/Warnings.tsx";
import { Chart } from "../../charts/Chart.tsx";
import { FormButtons } from "../../forms/FormButtons.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { TextField } from "../../forms/TextField.tsx";
import { lineChart, residualsChart } from "./instrumentCharts.ts";
import { draftOfInstrument, emptyDraft, type InstrumentDraft, instrumentOf, withRole } from "./instrumentDraft.ts";
import { CHANNEL_NAMES, type InstrumentLook, lookAt, METHOD_NAMES } from "./instrumentsModel.ts";
import { MethodFields } from "./MethodFields.tsx";

export interface InstrumentFormProps {
  /** The instrument to change; null for a new one. */
  readonly instrument: Instrument | null;
  /** "6 runs", empty where none. */
  readonly use: string;
  readonly onSave: (instrument: Instrument) => void;
  readonly onCancel: () => void;
}

/** An instrument with its raw data; what they are worth is worked out at every keystroke. */
export function InstrumentForm({ instrument, use, onSave, onCancel }: InstrumentFormProps) {
  const [draft, setDraft] = useState(() => (instrument ? draftOfInstrument(instrument) : emptyDraft()));
  const [tried, setTried] = useState(false);
  const read = useMemo(() => instrumentOf(draft), [draft]);
  const look = useMemo(() => (read.instrument ? lookAt(read.instrument) : null), [read]);
  const named = draft.name.trim() !== "";
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (read.instrument && look?.calibration && named) onSave(read.instrument);
  };
  return (
    <form class="instrument-form" onSubmit={submit} noValidate>
      <Answer look={look} missing={read.missing} />
      <p class="hint">
        ± in the sentence is half the 95 % interval. "Within ±" below is a tolerance: the value surely lies inside, each
        value as likely as another, so its standard uncertainty is the half-width over √3.
      </p>
      {use !== "" && <p class="hint">Used by {use}: saving reduces them again with this calibration.</p>}
      <InstrumentFields draft={draft} isNameless={tried && !named} onDraft={setDraft} />
      {look && <Evidence look={look} />}
      <FormButtons onCancel={onCancel} gap={tried ? (read.missing[0] ?? "") : ""} />
    </form>
  );
}

interface InstrumentFieldsProps {
  readonly draft: InstrumentDraft;
  /** It was to be saved without a name. */
  readonly isNameless: boolean;
  readonly onDraft: (next: (now: InstrumentDraft) => InstrumentDraft) => void;
}

function InstrumentFields({ draft, isNameless, onDraft }: InstrumentFieldsProps) {
  const change = (next: Partial<InstrumentDraft>) => onDraft((now) => ({ ...now, ...next }));
  return (
    <div class="form-grid">
      <TextField
        label="Name"
        value={draft.name}
        maxLength={120}
        problem={isNameless ? "Needed: a name." : null}
        onChange={(name) => change({ name })}
      />
      <SelectField
        label="Channel"
        value={draft.role}
        options={InstrumentRole.options.map((role) => ({ value: role, label: CHANNEL_NAMES[role] }))}
        onChange={(role) => onDraft((now) => withRole(now, role))}
      />
      <SelectField
        label="How it was calibrated"
        value={draft.kind}
        options={METHODS_OF[draft.role].map((kind) => ({ value: kind, label: METHOD_NAMES[kind] }))}
        onChange={(kind) => change({ kind })}
      />
      <MethodFields key={`${draft.role} ${draft.kind}`} draft={draft} onChange={change} />
      <TextField
        label="Note"
        value={draft.note}
        lines={2}
        maxLength={4000}
        optional
        onChange={(note) => change({ note })}
      />
    </div>
  );
}

function Answer({ look, missing }: { readonly look: InstrumentLook | null; readonly missing: readonly string[] }) {
  return (
    <p class="instrument-answer" role="status">
      {look ? look.sentence : `Nothing can be told yet. ${missing[0] ?? ""}`}
    </p>
  );
}

/** Line, residuals, what to mend and where the doubt comes from. */
function Evidence({ look }: { readonly look: InstrumentLook }) {
  const findings = look.calibration?.findings ?? null;
  const charts = useMemo(() => (findings ? [lineChart(findings), residualsChart(findings)] : []), [findings]);
  return (
    <>
      <Warnings items={look.warnings} title="What to do about this calibration" />
      {charts.length > 0 && (
        <div class="instrument-charts">
          {charts.map((spec) => (
            <Chart key={spec.title} spec={spec} height={240} />
          ))}
        </div>
      )}
      {look.budget.length > 0 && (
        <table class="instrument-budget">
          <caption>Where the doubt of the factor comes from, standard uncertainties</caption>
          <tbody>
            {look.budget.map(({ name, text }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{text}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

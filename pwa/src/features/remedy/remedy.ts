import { dotted, setIn } from '../../app/paths';
import { spreadWords } from '../../app/spreadWords';
import { show, type UnitChoice } from '../../app/units';
import type { AssessmentInput, Finding, InputEdit, Remedy, RemedyChange, Report } from '../../app/wire';
import { getIn } from '../../app/paths';

const w = spreadWords.remedy;

/** The remedies of one finding; none helps when every one is without a change. */
export type Mending = { id: string; finding: Finding | undefined; ways: Remedy[]; note: string };

/** Remedies by finding, in the order of the report. */
export function mendings(report: Report): Mending[] {
  const out = new Map<string, Mending>();
  for (const r of report.remedies ?? []) {
    const id = r.findingId ?? '';
    const found = out.get(id) ?? {
      id,
      finding: report.findings?.find((f) => f.id === id),
      ways: [],
      note: '',
    };
    if ((r.changes?.length ?? 0) > 0) found.ways.push(r);
    else found.note = r.note ?? '';
    out.set(id, found);
  }
  return [...out.values()];
}

/** One change in words: "Ramp length: 6 m → 7.4 m"; one without a scale says what it is in its title. */
export function changeText(change: RemedyChange, units: UnitChoice): string {
  const title = change.title ?? change.knob ?? '';
  if (change.from === undefined || change.to === undefined) return title;
  const unit = change.unit === 'C' ? 'degC' : (change.unit ?? '1');
  return w.change(title, show(change.from, unit, units), show(change.to, unit, units));
}

/** Titles of findings by their ids. */
export function titlesOf(report: Report, ids: string[] | undefined): string {
  return (ids ?? []).map((id) => report.findings?.find((f) => f.id === id)?.title ?? id).join('; ');
}

const valueOf = (edit: InputEdit): number | string | boolean | undefined =>
  edit.number ?? edit.text ?? edit.flag;

/** The document with one edit in it; a row of a list that is taken away closes up. */
function edited(document: AssessmentInput, edit: InputEdit): AssessmentInput {
  const path = dotted(edit.input ?? '');
  const value = valueOf(edit);
  const [, list = '', place] = /^(.*)\.(\d+)$/.exec(path) ?? [];
  const rows = getIn(document, list);
  if (value !== undefined || place === undefined || !Array.isArray(rows)) return setIn(document, path, value);
  return setIn(
    document,
    list,
    rows.filter((_, i) => i !== Number(place)),
  );
}

/** The document with a remedy in it; undefined when the remedy does not say how the document changes. */
export function applied(document: AssessmentInput, remedy: Remedy): AssessmentInput | undefined {
  const edits = remedy.edits ?? [];
  if (edits.length === 0) return undefined;
  return edits.reduce(edited, document);
}

/** True when a remedy changes the field, which is not the draft's to change. */
export function concernsField(remedy: Remedy): boolean {
  return (remedy.edits ?? []).some((edit) => /^field\b/.test(edit.input ?? ''));
}

/**
 * The draft with a remedy taken over. What was measured is measured no longer: a value taken over counts as estimated, without the spread of the old
 * measurement, until somebody measures it again.
 */
export function takenOver(document: AssessmentInput, remedy: Remedy): AssessmentInput | undefined {
  const changed = applied(document, remedy);
  if (!changed) return undefined;
  const quantities = (remedy.edits ?? [])
    .map((edit) => dotted(edit.input ?? ''))
    .filter((path) => path.endsWith('.value'))
    .map((path) => path.slice(0, -'.value'.length));
  return quantities.reduce((doc, path) => {
    const { value } = getIn(doc, path) as { value?: number };
    return setIn(doc, path, { value, basis: 'BASIS_ESTIMATED' });
  }, changed);
}

/** One finding before and after a change. */
export type Move = { id: string; title: string; before: Finding; after: Finding; verdict: boolean };

/** What a change moves: changed verdicts first, then the others by how far they move in the width of their bands; `still` counts those that move least. */
export type Moves = { shown: Move[]; verdicts: number; still: number };

const mostShown = 12;
/** Part of its band that a finding has to move by to be shown. */
const worthShowing = 0.1;

function shift({ before, after }: Move): number {
  if (before.value === undefined || after.value === undefined) return before.value === after.value ? 0 : 1;
  const band = (before.bandHigh ?? before.value) - (before.bandLow ?? before.value);
  const size = band > 0 ? band : Math.abs(before.value);
  return size > 0 ? Math.abs(after.value - before.value) / size : after.value === before.value ? 0 : 1;
}

/** Compares two reports finding by finding. */
export function moves(before: Report, after: Report): Moves {
  const all = (after.findings ?? []).flatMap((f): Move[] => {
    const was = before.findings?.find((b) => b.id === f.id);
    if (!was) return [];
    return [
      { id: f.id ?? '', title: f.title ?? '', before: was, after: f, verdict: was.verdict !== f.verdict },
    ];
  });
  const moved = all.filter((m) => m.verdict || shift(m) > 1e-6);
  const shown = moved
    .filter((m) => m.verdict || shift(m) >= worthShowing)
    .sort((a, b) => Number(b.verdict) - Number(a.verdict) || shift(b) - shift(a))
    .slice(0, mostShown);
  return { shown, verdicts: all.filter((m) => m.verdict).length, still: moved.length - shown.length };
}

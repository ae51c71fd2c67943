import { dotted, getIn, setIn } from '../../app/paths';
import { spreadWords } from '../../app/spreadWords';
import { numberText, type UnitChoice } from '../../app/units';
import type {
  AssessmentInput,
  Finding,
  InputEdit,
  Remedy,
  RemedyChange,
  Report,
  Verdict,
} from '../../app/wire';
import { figureText } from '../bench/bench';
import { titleOf } from '../findings/findings';

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
  const text = (value: number): string =>
    shares.has(change.knob ?? '') ? percentText(value) : figureText(value, change.unit ?? '1', units);
  return w.change(title, text(change.from), text(change.to));
}

/** Changes whose figure is a share of a whole. */
const shares = new Set(['fuel.load', 'pack.charge', 'thrust.setting']);

const percentText = (share: number): string => `${numberText(Math.round(share * 1000) / 10)}\u00a0%`;

/** What is peculiar to a remedy; that it is reckoned by first-order bands is said once for all of them. */
export function noteOf(remedy: Remedy): string {
  return (remedy.note ?? '')
    .replace(/By first-order bands at this value; [\d.]+ % is asked for\. /, '')
    .replace('Other findings are held against their bands as the document stands.', '')
    .trim();
}

/** Titles of findings by their ids. */
export function titlesOf(report: Report, ids: string[] | undefined): string {
  return (ids ?? []).map((id) => titleOf(report.findings?.find((f) => f.id === id)) || id).join('; ');
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
export type Moves = { shown: Move[]; verdicts: number; better: number; still: number };

const mostShown = 12;
/** Part of its band that a finding has to move by to be shown. */
const worthShowing = 0.1;

function shift({ before, after }: Move): number {
  if (before.value === undefined || after.value === undefined) return before.value === after.value ? 0 : 1;
  const band = (before.bandHigh ?? before.value) - (before.bandLow ?? before.value);
  const size = band > 0 ? band : Math.abs(before.value);
  return size > 0 ? Math.abs(after.value - before.value) / size : after.value === before.value ? 0 : 1;
}

const fromWorst: (Verdict | undefined)[] = [
  'VERDICT_FAILS',
  'VERDICT_UNKNOWN',
  'VERDICT_TIGHT',
  'VERDICT_HOLDS',
];
const rank = (f: Finding): number => fromWorst.indexOf(f.verdict ?? 'VERDICT_UNKNOWN');

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
  const turned = all.filter((m) => m.verdict);
  const better = turned.filter((m) => rank(m.after) > rank(m.before)).length;
  return { shown, verdicts: turned.length, better, still: moved.length - shown.length };
}

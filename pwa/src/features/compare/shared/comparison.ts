import { dotted, unitOf } from '../../../app/paths';
import { showApart, type UnitChoice } from '../../../app/units';
import type {
  AssessmentInput,
  ComparedValue,
  Comparison,
  Finding,
  FindingMove,
  InputDifference,
  Quantity,
} from '../../../app/wire';
import { compareWords } from '../../../app/compareWords';
import { words } from '../../../app/words';
import { basisText, plain } from '../../findings/chain';
import { pathText } from '../../findings/findings';

const w = compareWords;

/** Where a difference stands: in the second document, or in the first when it was removed. */
export function pathOf(d: InputDifference): string {
  return d.toPath || d.fromPath || '';
}

/** A difference's place in words, without the part of the document it lies in: "mass, empty mass". */
export function nameOf(d: InputDifference, from: AssessmentInput, to: AssessmentInput): string {
  const name = pathText(pathOf(d), d.toPath ? to : from);
  const part = pathText(pathOf(d).split(/[.[]/)[0] ?? '');
  return name.startsWith(`${part}, `) ? name.slice(part.length + 2) : name;
}

/** Differences by the part of the document they lie in, in its order. */
export function byPart(differences: InputDifference[]): { part: string; list: InputDifference[] }[] {
  const groups = new Map<string, InputDifference[]>();
  for (const d of differences) {
    const part = pathOf(d).split(/[.[]/)[0] ?? '';
    groups.set(part, [...(groups.get(part) ?? []), d]);
  }
  return [...groups].map(([part, list]) => ({ part: w.parts[part] ?? part, list }));
}

/** Value, basis and spread of a quantity, as far as they are asked for. */
function quantityText(
  q: Quantity,
  other: Quantity | undefined,
  parts: string[],
  path: string,
  units: UnitChoice,
): string {
  const si = unitOf(dotted(path));
  const said = {
    value: q.value === undefined ? w.none : showApart(q.value, other?.value, si, units),
    basis: basisText(q.basis),
    // A spread of degrees Celsius is a difference of temperatures; its number is the same.
    spread: q.spread === undefined ? w.noSpread : w.spread(showApart(q.spread, other?.spread, si, units)),
  };
  return (['value', 'basis', 'spread'] as const)
    .filter((part) => parts.includes(part))
    .map((part) => said[part])
    .join(', ');
}

/** The parts of a quantity that are worth a word when it stands alone. */
function given(q: Quantity): string[] {
  return ['value', ...(q.basis ? ['basis'] : []), ...(q.spread === undefined ? [] : ['spread'])];
}

/** What stands at a place, in words and the person's units; of a changed quantity only what differs. */
export function valueText(
  value: ComparedValue | undefined,
  d: InputDifference,
  path: string,
  units: UnitChoice,
): string {
  if (!value) return w.none;
  const other = value === d.from ? d.to : d.from;
  if (value.quantity) {
    const parts = d.quantityParts?.length ? d.quantityParts : given(value.quantity);
    return quantityText(value.quantity, other?.quantity, parts, path, units);
  }
  if (value.partJson) return partText(value, d);
  if (value.number !== undefined) return showApart(value.number, other?.number, unitOf(dotted(path)), units);
  return plain(value.truth ?? value.text ?? '', dotted(path), units);
}

function partText(value: ComparedValue, d: InputDifference): string {
  if (d.kind === 'CHANGE_KIND_REORDERED') return (JSON.parse(value.partJson ?? '[]') as string[]).join(', ');
  return value.entryCount ? words.chain.entries(value.entryCount) : w.whole;
}

/** Findings that moved, worst change first, and the others. */
export function splitMoves(comparison: Comparison): { moved: FindingMove[]; still: FindingMove[] } {
  const moves = comparison.moves ?? [];
  return { moved: moves.filter((m) => m.moved), still: moves.filter((m) => !m.moved) };
}

/** A finding's verdict, or that the question is not asked. */
export function verdictOf(f: Finding | undefined): string {
  return f ? words.verdict[f.verdict ?? 'VERDICT_UNKNOWN'] : w.notAsked;
}

/** The verdict of both in a few words. */
export function verdictText(m: FindingMove): string {
  if (!m.verdictChanged) return w.unchangedVerdict(verdictOf(m.to));
  return `${verdictOf(m.from)} \u2192 ${verdictOf(m.to)}`;
}

/** Value, margin and limit of both, each that stands in either; a limit only when it differs. */
export function figuresOf(m: FindingMove, units: UnitChoice): { name: string; from: string; to: string }[] {
  const unit = m.to?.unit ?? m.from?.unit ?? '1';
  const line = (name: string, key: 'value' | 'margin' | 'limit') => ({
    name,
    known: m.from?.[key] !== undefined || m.to?.[key] !== undefined,
    from: showApart(m.from?.[key], m.to?.[key], unit, units),
    to: showApart(m.to?.[key], m.from?.[key], unit, units),
  });
  const limit = line(w.limit, 'limit');
  return [
    line(w.value, 'value'),
    line(w.margin, 'margin'),
    { ...limit, known: limit.known && limit.from !== limit.to },
  ]
    .filter((l) => l.known)
    .map(({ name, from, to }) => ({ name, from, to }));
}

/** How many inputs a finding names before it says how many more there are. */
const namedInputs = 5;

/** The changed inputs that a finding reads, in a sentence. */
export function restsOn(
  m: FindingMove,
  comparison: Comparison,
  from: AssessmentInput,
  to: AssessmentInput,
): string {
  const read = new Set(m.changedInputs ?? []);
  const names = (comparison.differences ?? [])
    .filter((d) => read.has(pathOf(d)))
    .map((d) => nameOf(d, from, to));
  if (names.length === 0) return w.byNone;
  const first = names.slice(0, namedInputs);
  const more = names.length - first.length;
  return w.by([...first, ...(more > 0 ? [w.more(more)] : [])].join('; '));
}

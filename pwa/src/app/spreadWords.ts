import type { RemedyEffort } from './wire';

/** Words of the spread from samples and of the remedies; loaded with their parts of the page. */
export const spreadWords = {
  title: 'Spread from samples',
  line: 'Every uncertain input moved at once, many times over: how often each finding holds, and what to measure next.',
  how: 'Each sample draws all inputs anew from how each is known. It is computed on this device and needs no connection.',
  samples: 'Samples',
  counts: { 128: '128, a first look', 512: '512, the usual', 1024: '1024, a closer look' } as Record<
    number,
    string
  >,
  run: 'Draw the spread',
  again: 'Draw it again',
  cancel: 'Cancel',
  running: 'Drawing the spread',
  passes: (done: number, total: number) => `${String(done)} of ${String(total)} steps`,
  empty: 'Not drawn yet. The bands above come from one input moved at a time.',
  cancelled: 'Cancelled. Nothing was changed.',
  cancelledKept: 'Cancelled. What is shown below was drawn before.',
  failed: 'The spread was not drawn:',
  stale: 'The document has changed since. What is shown below belongs to the earlier one.',
  done: (n: number, place: string, took: string) => `${String(n)} samples, drawn ${place} in ${took}.`,
  places: { device: 'on this device', server: 'by the club’s server' },
  seconds: (s: string) => `${s} s`,
  lost: (n: number) =>
    n === 1
      ? 'One sample was no document that can be computed and is left out.'
      : `${String(n)} samples were no document that can be computed and are left out.`,
  openTitle: 'Findings that do not hold often enough',
  openNone: 'Every finding that was sampled holds as often as its class asks for.',
  holding: (n: number) =>
    n === 1 ? 'One finding holds often enough' : `${String(n)} findings hold often enough`,
  unproven: (n: number) =>
    n === 1
      ? 'One finding holds often enough and stays tight for another reason'
      : `${String(n)} findings hold often enough and stay tight for another reason`,
  unsampled: (n: number) =>
    n === 1
      ? 'One finding is unknown or has no limit, so it has no share of samples.'
      : `${String(n)} findings are unknown or have no limit, so they have no share of samples.`,
  median: 'median',
  band: (low: string, high: string) => `5 to 95 %: ${low} to ${high}`,
  next: {
    title: 'Measure this next',
    line: 'The measurement that settles most findings stands first.',
    none: 'No single measurement would settle a finding or carries much of the spread of an open one.',
    settles: 'Settles:',
    carries: (share: string) => `Settles nothing alone, but carries ${share} of an open finding’s spread.`,
    box: (title: string) => `Go to the box: ${title}`,
    go: 'Go to the box',
    away: 'This value has no box on this page.',
  },
  remedy: {
    title: 'Remedies',
    line: 'The smallest changes that would make a finding hold, least work first. Nothing is changed until you take it over.',
    run: 'Look for remedies',
    again: 'Look again',
    running: 'Looking for remedies',
    empty: 'Not looked for yet.',
    cancelled: 'Cancelled. Nothing was changed.',
    failed: 'The remedies were not found:',
    none: 'Every finding that is known holds often enough: nothing needs a remedy.',
    nothing: 'No change among those tried helps.',
    triedAll: 'What was tried, and what comes nearest',
    efforts: {
      REMEDY_EFFORT_UNSPECIFIED: '',
      REMEDY_EFFORT_ANOTHER_DAY: 'another day, or the other way round',
      REMEDY_EFFORT_ADJUST: 'a setting, fuel or ballast',
      REMEDY_EFFORT_EQUIPMENT: 'other equipment',
      REMEDY_EFFORT_REBUILD: 'a change of the model itself',
    } satisfies Record<RemedyEffort, string>,
    change: (title: string, from: string, to: string) => `${title}: ${from} → ${to}`,
    fixes: (n: number, more: string) =>
      n === 1 ? `Makes one finding hold: ${more}.` : `Makes ${String(n)} findings hold: ${more}.`,
    breaks: (n: number, more: string) => (n === 1 ? `Breaks one: ${more}.` : `Breaks ${String(n)}: ${more}.`),
    breaksNone: 'Breaks none.',
    how: 'What a change mends and breaks is reckoned by moving one input at a time, the other findings held against their bands as the document stands. Trying a change draws samples of all inputs and may find more.',
    more: (n: number) => (n === 1 ? 'One more way' : `${String(n)} more ways`),
    turned: (better: number, worse: number) =>
      `${better === 1 ? 'One verdict is' : `${String(better)} verdicts are`} better, ${worse === 0 ? 'none' : String(worse)} worse.`,
    notYet: (title: string, odds: string) =>
      `${title} does not hold often enough yet by these samples. ${odds}`,
    odds: (n: string, asked: string) =>
      `It would then hold in ${n} of 100${asked === '0' ? '' : `; ${asked} asked for`}.`,
    try: 'Try it',
    trying: 'Computing the changed document',
    tried: 'As it is, and with the change',
    close: 'Put it away',
    asIs: 'as it is',
    changed: 'with the change',
    verdicts: (n: number) =>
      n === 0 ? 'No verdict changes.' : n === 1 ? 'One verdict changes.' : `${String(n)} verdicts change.`,
    still: (n: number) =>
      n === 1 ? 'One other finding moves a little.' : `${String(n)} other findings move a little.`,
    same: 'Nothing moves.',
    take: 'Take it over into the draft',
    takeHint: 'Only the draft changes. A value taken over counts as estimated until it is measured.',
    taken: 'Taken over into the draft, as estimated until measured.',
    undo: 'Undo',
    undone: 'Taken back: the draft is as it was.',
    fieldOnly: 'This concerns the field, not the draft: ask its keeper.',
    reader: 'Only the owner can take this over, in the draft.',
    untried: 'This change cannot be tried here.',
  },
};

/** Words of the bench list and the cards; fetched with the sheet that shows them. */
export const benchWords = {
  bench: 'Bench',
  benchLine: (n: number, open: number) =>
    n === 0
      ? 'Nothing to inspect yet: describe the model first.'
      : `${String(n)} ${n === 1 ? 'point' : 'points'} to inspect on this model` +
        (open === 0 ? '.' : `; ${String(open)} of them bear on findings that fail or are unknown.`),
  cards: 'Cards',
  cardsLine: (titles: string[]) =>
    titles.length === 0 ? 'No cards yet: describe the model first.' : `${titles.join(', ')}.`,
  group: (name: string, n: number) => `${name}: ${String(n)}`,
  printList: 'Print the bench list',
  printCards: 'Print the cards',
  printHint: 'The print has an empty box for tick, value and name at each point, and a page to each card.',
  heading: (model: string) => `Bench inspection: ${model === '' ? 'model without a name' : model}`,
  cardHeading: (card: string, model: string) => (model === '' ? card : `${card}: ${model}`),
  how: 'How',
  why: 'Why',
  enters: 'Takes the place of',
  photo: 'Take a photo.',
  outside: 'A reading outside its figure is entered in the document, and everything is computed again.',
  openPoint: 'bears on a finding that fails or is unknown',
  atLeast: (figure: string) => `at least ${figure}`,
  atMost: (figure: string) => `at most ${figure}`,
  between: (low: string, high: string) => `${low} to ${high}`,
  boxes: { tick: 'in order', value: 'value', name: 'name', photo: 'photo' },
  printed: (field: string, when: string) =>
    field === '' ? `printed ${when}` : `for ${field}, printed ${when}`,
  core: (version: string) => `computed by core ${version}`,
  minutes: (text: string) => `${text} min`,
  from: (id: string) => `from ${id}`,
} as const;

import { describe, expect, it } from 'vitest';
import { reviewDraft, reviewOf } from '../../src/features/incidents/shared/review';

describe('a review as it is typed', () => {
  const incident = {
    title: 'Flame-out',
    narrative: 'In the turn.',
    occurTime: '2026-05-02T10:00:00Z',
    etag: 'e7',
    state: 'INCIDENT_STATE_UNDER_REVIEW' as const,
    occurrenceCategories: ['FUEL', 'SCF-PP'],
    causes: ['Air in the line.', 'No trap.'],
    actions: [{ text: 'Fit a trap', owner: 'people/1', done: false }],
  };

  it('rests on the version that it was begun on, and gives back what it was made of', () => {
    const draft = reviewDraft(incident);
    expect(draft.rests).toBe('e7');
    const { state, occurrenceCategories, causes, actions } = incident;
    expect(reviewOf(draft)).toEqual({ state, occurrenceCategories, causes, actions });
  });

  it('leaves out empty lines and actions without words, and writes categories in capitals', () => {
    const draft = {
      ...reviewDraft({ title: '', narrative: '', occurTime: '' }),
      categories: ' fuel, ,re ',
      causes: 'One\n\n two ',
    };
    const review = reviewOf({ ...draft, actions: [{ text: '  ' }, { text: 'Do it' }] });
    expect(review.occurrenceCategories).toEqual(['FUEL', 'RE']);
    expect(review.causes).toEqual(['One', 'two']);
    expect(review.actions).toEqual([{ text: 'Do it' }]);
    expect(review.state).toBe('INCIDENT_STATE_REPORTED');
  });
});

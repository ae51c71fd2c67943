import { equal, hardToUse, rest, see } from './browser.mjs';

const flameOut = 'Engine stopped in the second turn';

async function openFlameOut(page) {
  await page.goto('/incidents');
  await page.locator(`[data-incident="${flameOut}"]`).click();
  await see(page.getByRole('heading', { name: flameOut }), 'the incident');
}

async function statesOf(page) {
  const answer = await rest(page, 'GET', '/v1/clubs/larkmoor/approvals?pageSize=100');
  return new Map(answer.body.approvals.map((a) => [a.name, a.state]));
}

/** A red square of four pixels, as PNG. */
const photo = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAEElEQVR4nGP4z8AARAwQCgAf7gP9i18U1AAAAABJRU5ErkJggg==',
  'base64',
);

/** From a report to a lesson that holds what it matches. */
export function incidentTests({ phone }) {
  const shared = {};
  return [
    [
      'anybody reports an incident with a photo',
      async () => {
        const page = await phone('Bram Okafor');
        await page.goto('/incidents/new');
        await page.locator('select[name=injury]').selectOption('INJURY_NONE');
        await page.locator('input[name=title]').fill('Canopy came off on the strip');
        await page.locator('textarea[name=narrative]').fill('At full power before the launch. Nobody near.');
        await page
          .locator('input[type=file]')
          .setInputFiles({ name: 'canopy.png', mimeType: 'image/png', buffer: photo });
        await page.getByRole('button', { name: 'Send the report' }).click();
        await see(
          page.getByRole('heading', { name: 'Canopy came off on the strip' }),
          'the reported incident',
        );
        await see(page.locator('img[alt="Photo 1"]'), 'the photo');
        equal(await page.getByRole('heading', { name: 'Review' }).count(), 0, 'review forms of a member');
        await page.context().close();
      },
    ],
    [
      'the committee keeps a review with an action, its owner and date',
      async () => {
        const page = await phone('Mei Castellan');
        shared.mei = page;
        await openFlameOut(page);
        await page.getByRole('button', { name: 'Add an action' }).click();
        const action = page.locator('.action').last();
        await action
          .getByLabel('What will be done')
          .fill('Look for bubbles in the line at every bench inspection.');
        await action.getByLabel('By whom').selectOption({ label: 'Ines Valdez' });
        await action.getByLabel('Until').fill('2027-01-31');
        const causes = page.locator('textarea[name=causes]');
        await causes.fill('Air in the line.\nThe trap was left out.');
        await see(page.locator('[data-form=review] [data-kept]', { hasText: 'Kept on this device' }), 'kept');
        await page.reload();
        await see(page.locator('[data-form=review]').getByText('was restored'), 'the draft after a reload');
        equal(await causes.inputValue(), 'Air in the line.\nThe trap was left out.', 'causes after a reload');
        equal((await hardToUse(page)).join('; '), '', 'the review');
        await page.getByRole('button', { name: 'Keep the review' }).click();
        await see(page.getByText('The review is kept.'), 'kept review');
        await page.reload();
        await see(page.locator('.action').nth(1), 'the action after a reload');
        equal(await page.getByText('was restored').count(), 0, 'drafts left of a review that was kept');
      },
    ],
    [
      'a lesson is tried before it is proposed, and a wrong predicate is refused in words',
      async () => {
        const page = shared.mei;
        await page.locator('input[name=predicate]').fill('model.no_such_part');
        await page.getByRole('button', { name: 'Try it on the club’s models' }).click();
        await see(page.locator('[data-trouble]'), 'refused predicate');
        await page.locator('input[name=predicate]').fill('!model.fuel_system.felt_pickup');
        await page.getByRole('button', { name: 'Try it on the club’s models' }).click();
        await see(page.locator('[data-tried]', { hasText: 'It would match' }), 'the trial');
      },
    ],
    [
      'one committee member’s word adopts nothing',
      async () => {
        const page = shared.mei;
        shared.before = await statesOf(page);
        await page.getByRole('button', { name: 'Adopt this lesson' }).click();
        await see(page.getByText('You have adopted it; another committee member is needed.'), 'one vote');
        equal(await page.locator('[data-lesson="LESSON_STATE_ADOPTED"]').count(), 0, 'adopted lessons');
        const now = await statesOf(page);
        for (const [name, state] of shared.before) equal(now.get(name), state, `state of ${name}`);
      },
    ],
    [
      'the second one’s adopts it, and exactly the matching open approvals are held',
      async () => {
        const page = await phone('Tomas Lind');
        await openFlameOut(page);
        const predicate = await page.locator('[data-lesson] code').first().textContent();
        const tried = await rest(page, 'POST', '/v1/clubs/larkmoor/lessons:try', { predicate });
        const matching = new Set(tried.body.matchingApprovals ?? []);
        if (matching.size === 0) throw new Error('the lesson of the demonstration matches no open approval');
        await page.getByRole('button', { name: 'Adopt this lesson' }).click();
        await see(page.locator('[data-lesson="LESSON_STATE_ADOPTED"]'), 'the adopted lesson');
        for (let i = 0; i < 40; i++) {
          const now = await statesOf(page);
          if ([...matching].every((name) => now.get(name) === 'APPROVAL_STATE_HELD')) break;
          await page.waitForTimeout(250);
        }
        const now = await statesOf(page);
        for (const [name, before] of shared.before) {
          const wanted = matching.has(name) ? 'APPROVAL_STATE_HELD' : before;
          equal(now.get(name), wanted, `state of ${name}`);
        }
        shared.held = [...matching][0];
        shared.tomas = page;
      },
    ],
    [
      'a held approval says why',
      async () => {
        const page = shared.tomas;
        await page.goto(`/approvals/${shared.held.split('/').pop()}`);
        await see(page.locator('[data-state="APPROVAL_STATE_HELD"]'), 'state held');
        await see(page.locator('[data-hold]'), 'the hold and its reason');
      },
    ],
  ];
}

import { describe, equal, hardToUse, rest, see } from './browser.mjs';
import { fits } from './page.mjs';

const named = 'Redshank, compared';
const state = (page, name) => page.locator(`[data-state="APPROVAL_STATE_${name}"]`);
const send = (page) => page.locator('form[data-form] button[type=submit]').click();
const difference = (page, path) => page.locator(`[data-difference="${path}"]`);
const move = (page, id) => page.locator(`[data-move="${id}"]`);

/** Looks at a page on every ground and at the narrowest phone. */
async function easyToUse(page) {
  for (const media of [
    { colorScheme: 'light', contrast: null },
    { colorScheme: 'dark', contrast: null },
    { colorScheme: 'light', contrast: 'more' },
  ]) {
    await page.emulateMedia(media);
    equal((await hardToUse(page)).join('; '), '', JSON.stringify(media));
  }
  await page.emulateMedia({ colorScheme: 'light', contrast: null });
  await page.setViewportSize({ width: 360, height: 740 });
  await fits(page, 'the page');
  await page.setViewportSize({ width: 390, height: 844 });
}

/** What changed between two revisions: at the officer's approval, and as the builder chooses. */
export function compareTests({ phone }) {
  const shared = {};
  return [
    [
      'an approval says what changed since the last revision, and which findings moved by it',
      async () => {
        const ada = await phone('Ada Thorne');
        shared.ada = ada;
        await describe(ada, 'redshank_quarry_top');
        await ada.locator('input[name=name]').fill(named);
        await ada.locator('select[name=field]').selectOption({ label: 'Quarry Top' });
        await ada.getByRole('button', { name: 'Submit for first-flight approval' }).click();
        await see(state(ada, 'SUBMITTED'), 'state submitted');
        await see(ada.locator('[data-changes]', { hasText: 'first submission' }), 'nothing earlier');
        shared.path = new URL(ada.url()).pathname;

        const ines = await phone('Ines Valdez');
        shared.ines = ines;
        await ines.goto(shared.path);
        await ines.locator('[data-action="return"]').click();
        await ines.locator('textarea[name=reason]').fill('A longer ramp, please.');
        await send(ines);
        await see(state(ines, 'RETURNED'), 'state returned');

        await ada.goto(`${shared.path}/change`);
        await ada.locator('[data-entry="launchPlan.ramp.lengthMeters"] input').fill('20');
        await ada.locator('[data-entry="launchPlan.ramp.endHeightMeters"] input').fill('2.9');
        await ada.locator('[data-entry="model.engines.0.staticThrustNewtons"] input').fill('84');
        await ada.getByRole('button', { name: 'Keep the new revision and send again' }).click();
        await see(state(ada, 'SUBMITTED'), 'state submitted again');

        await ines.goto(shared.path);
        await see(ines.locator('[data-changes] [data-comparison]'), 'the comparison');
        await see(difference(ines, 'launchPlan.ramp.lengthMeters'), 'the longer ramp');
        await see(difference(ines, 'model.engines[0].staticThrustNewtons'), 'the thrust');
        equal(await difference(ines, 'model.surfaces').count(), 0, 'unchanged surfaces');
        const speed = move(ines, 'launch.end_speed');
        await see(speed, 'the speed at the end of the ramp');
        equal(await speed.locator('svg[role=img]').count(), 2, 'strips over each other');
        await see(speed.getByText('ramp length'), 'the input that the finding reads');
        await see(ines.locator('[data-comparison] summary', { hasText: 'did not move' }), 'folded findings');
      },
    ],
    [
      'the changes of an approval are easy to use on every ground and fit 360 px',
      () => easyToUse(shared.ines),
    ],
    [
      'a member compares two revisions, then another field, and the page says what it chose',
      async () => {
        const page = shared.ada;
        await page.goto(shared.path);
        await page.getByRole('link', { name: 'Compare with another revision' }).click();
        await see(page.locator('form[data-form=compare]'), 'the choice');
        await send(page);
        await see(page.locator('[data-comparison]'), 'the comparison');
        equal(await page.locator('[data-difference]').count(), 1, 'inputs that differ between the revisions');
        await see(difference(page, 'model.engines[0].staticThrustNewtons'), 'the thrust');
        shared.moved = await page
          .locator('[data-move]')
          .evaluateAll((all) => all.map((e) => e.dataset.move).join());
        if (shared.moved === '') throw new Error('nothing moved with the thrust');
        await page.locator('select[name=field]').nth(1).selectOption({ label: 'Long Acre' });
        await see(page.getByText('compare again'), 'word that the choice changed');
        await send(page);
        await see(page.locator('[data-summary]', { hasText: /^(?!1 input)/ }), 'the other field compared');
        await page.emulateMedia({ media: 'print' });
        await see(
          page.locator('[data-chosen]', { hasText: 'field: Long Acre' }),
          'both sides named on paper',
        );
        await page.emulateMedia({ media: 'screen' });
        await page.locator('[data-comparison] summary', { hasText: 'differ' }).click();
        await see(difference(page, 'field.displayName'), 'the other field');
        await easyToUse(page);
      },
    ],
    [
      'without the server the device compares, and gives the server’s answer',
      async () => {
        const page = shared.ada;
        const id = new URL(page.url()).pathname.split('/')[2];
        const revisions = await rest(page, 'GET', `/v1/clubs/larkmoor/models/${id}/revisions`);
        equal(revisions.body.revisions.length, 2, 'revisions kept');
        await page.locator('select[name=field]').nth(1).selectOption('');
        await page.context().setOffline(true);
        await see(page.getByText('compare again'), 'word that the choice changed');
        await send(page);
        await page.waitForFunction(() => document.querySelectorAll('[data-difference]').length === 1);
        equal(
          await page.locator('[data-move]').evaluateAll((all) => all.map((e) => e.dataset.move).join()),
          shared.moved,
          'moved',
        );
        await page.context().setOffline(false);
      },
    ],
  ];
}

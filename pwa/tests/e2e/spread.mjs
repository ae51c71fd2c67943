import { describe, equal, hardToUse, see } from './browser.mjs';
import { fits } from './page.mjs';

const part = (page, name) => page.locator(`[data-sheet="${name}"]`);

/** Opens a part of the model's sheet. */
async function open(page, name) {
  await see(part(page, name), `part ${name} of the sheet`);
  if (!(await part(page, name).evaluate((e) => e.open)))
    await part(page, name).locator('summary').first().click();
}

/** Waits for a run to come to a state; a slow machine may take its time. */
async function reached(page, name, state) {
  await part(page, name)
    .locator(`[data-run="${state}"]`)
    .waitFor({ timeout: 120000 })
    .catch(() => {
      throw new Error(`${name} is not ${state}`);
    });
}

/** The spread from samples, what to measure next, and a remedy tried, taken over and taken back, all without a network. */
export function spreadTests({ phone }) {
  const shared = {};
  return [
    [
      'the core of a member’s phone is loaded before the network goes',
      async () => {
        const page = await phone('Ada Thorne');
        shared.page = page;
        await describe(page, 'redshank_quarry_top');
        await page.evaluate(() => navigator.serviceWorker.ready);
        const mass = page.locator('[data-entry="model.mass.emptyMassKg"] input').first();
        const given = await mass.inputValue();
        for (let kg = 4.3; kg < 5 && (await page.locator('[data-place=device]').count()) === 0; kg += 0.01) {
          await mass.fill(kg.toFixed(2));
          await page.waitForTimeout(600);
        }
        await see(page.locator('[data-place=device]'), 'findings of the device');
        await mass.fill(given);
        await see(
          page.locator('#live[aria-busy=false] [data-finding="launch.end_speed"][data-verdict=fails]'),
          'the failing end speed',
        );
        for (const name of ['spread', 'remedies']) await open(page, name);
        await see(part(page, 'remedies').getByText('Not looked for yet'), 'the empty state');
      },
    ],
    [
      'a run without a network is cancelled and changes nothing',
      async () => {
        const page = shared.page;
        await page.context().setOffline(true);
        await see(part(page, 'spread').getByText('Not drawn yet'), 'the empty state');
        await part(page, 'spread').getByRole('button', { name: 'Draw the spread' }).click();
        await see(part(page, 'spread').locator('progress[max]'), 'progress');
        await part(page, 'spread').getByRole('button', { name: 'Cancel' }).click();
        await reached(page, 'spread', 'cancelled');
        equal(await part(page, 'spread').locator('[data-sampled]').count(), 0, 'findings of a cancelled run');
      },
    ],
    [
      'drawn on the phone, it says how often each finding holds and what to measure next',
      async () => {
        const page = shared.page;
        await part(page, 'spread').locator('select').selectOption('128');
        await part(page, 'spread').getByRole('button', { name: 'Draw the spread' }).click();
        await reached(page, 'spread', 'done');
        await see(part(page, 'spread').locator('[data-drawn=device]'), 'where it was drawn');
        const speed = part(page, 'spread').locator('[data-sampled="launch.end_speed"]');
        const odds = await speed.locator('[data-odds]').textContent();
        if (!/^Holds in [\d.]+ of 100; 95 asked for: the model\.$/.test(odds.trim()))
          throw new Error(`odds: ${odds}`);
        await see(speed.locator('[data-shares] li'), 'what decides the spread');
        const advice = part(page, 'spread').locator('[data-advice]').first();
        await see(advice, 'what to measure next');
        const path = await advice.getAttribute('data-advice');
        await advice.getByRole('button').click();
        await page.waitForFunction(
          (wanted) => document.activeElement?.closest('[data-entry]')?.dataset.entry === wanted,
          path.replace(/\[(\d+)\]/g, '.$1'),
        );
      },
    ],
    [
      'remedies are found on the phone and tried without touching the draft',
      async () => {
        const page = shared.page;
        await part(page, 'remedies').getByRole('button', { name: 'Look for remedies' }).click();
        await reached(page, 'remedies', 'done');
        const remedy = part(page, 'remedies')
          .locator('[data-mends="launch.end_speed"] [data-remedy]')
          .first();
        await see(remedy, 'a remedy of the end speed');
        const kept = await page.locator('[data-kept]').textContent();
        await remedy.getByRole('button', { name: /^Try it/ }).click();
        const moved = remedy.locator('[data-moved="launch.end_speed"][data-turned=true]');
        await moved.waitFor({ timeout: 120000 });
        equal(await moved.locator('svg[role=img]').count(), 2, 'strips beside each other');
        equal(await page.locator('[data-kept]').textContent(), kept, 'kept state of the draft');
        shared.remedy = remedy;
      },
    ],
    [
      'a remedy is taken over by an explicit act, and one step takes it back',
      async () => {
        const page = shared.page;
        const speed = page.locator('#live [data-finding="launch.end_speed"]');
        const fails = async (wanted) => {
          await page.waitForFunction(
            ([verdict]) => {
              const row = document.querySelector('#live [data-finding="launch.end_speed"]');
              return row && (row.dataset.verdict === 'fails') === verdict;
            },
            [wanted],
            { timeout: 60000 },
          );
        };
        equal(await speed.getAttribute('data-verdict'), 'fails', 'end speed before');
        await shared.remedy.getByRole('button', { name: 'Take it over into the draft' }).click();
        await see(part(page, 'remedies').locator('[data-taken=taken]'), 'what was taken over');
        await fails(false);
        await part(page, 'remedies').locator('[data-taken]').getByRole('button', { name: 'Undo' }).click();
        await see(part(page, 'remedies').locator('[data-taken=undone]'), 'what was taken back');
        await fails(true);
      },
    ],
    [
      'spread and remedies are easy to use and fit 360 px',
      async () => {
        const page = shared.page;
        for (const colorScheme of ['light', 'dark']) {
          await page.emulateMedia({ colorScheme });
          equal((await hardToUse(page)).join('; '), '', `on ${colorScheme} ground`);
        }
        await page.setViewportSize({ width: 360, height: 740 });
        await fits(page, 'the page');
        await page.goto('/approvals');
        await see(
          page.locator('[data-not-fetched]'),
          'that nothing could be fetched, instead of an empty list',
        );
        await page.context().setOffline(false);
        await page.getByRole('button', { name: 'Try again' }).click();
        await see(page.locator('ul.list a'), 'the approvals once there is a network');
        await page.context().close();
      },
    ],
  ];
}

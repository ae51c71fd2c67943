import { equal, hardToUse, see } from './browser.mjs';

const part = (page, name) => page.locator(`[data-sheet="${name}"]`);

async function open(page, name) {
  await see(part(page, name), `part ${name} of the sheet`);
  if (!(await part(page, name).evaluate((e) => e.open)))
    await part(page, name).locator('summary').first().click();
}

/** What A4 leaves between the margins of the print rules, in CSS pixels. */
const paper = { width: 688, height: 1009 };

/** The bench list and the cards of an approval: on a phone, and on paper. */
export function benchTests({ phone }) {
  const shared = {};
  return [
    [
      'the bench list says what to do, what is wanted and why, under its headings',
      async () => {
        const page = await phone('Tomas Lind');
        shared.page = page;
        await page.goto('/approvals');
        await page.locator('a', { hasText: 'Sandmartin' }).first().click();
        await open(page, 'bench');
        const fuel = part(page, 'bench').locator('[data-bench-group="Fuel"]');
        await fuel.locator('summary').click();
        const trap = fuel.locator('[data-bench="bench.fuel.trap_volume"]');
        await see(trap.locator('.wanted', { hasText: 'at least' }), 'the least volume of the trap');
        await see(trap.locator('.why', { hasText: 'air trap feeds the engine' }), 'what rests on it');
        await page.setViewportSize({ width: 360, height: 740 });
        equal((await hardToUse(page)).join('; '), '', 'bench list at 360 px');
      },
    ],
    [
      'each card stands with its figures and every caution',
      async () => {
        const page = shared.page;
        await open(page, 'cards');
        const cards = part(page, 'cards').locator('[data-card]');
        await see(cards.first(), 'a card');
        equal(
          (await cards.evaluateAll((all) => all.map((e) => e.dataset.card))).join(' '),
          'card.static_run card.taxi card.range_check card.first_flight',
          'cards',
        );
        for (const card of await cards.all())
          equal(await card.locator('.line', { hasText: 'Bear in mind' }).count(), 4, 'cautions of a card');
        await see(cards.last().locator('strong', { hasText: 'min' }).first(), 'the landing call');
        equal((await hardToUse(page)).join('; '), '', 'cards at 360 px');
      },
    ],
    [
      'list and cards print alone, with empty boxes and a page to each card',
      async () => {
        const page = shared.page;
        await page.emulateMedia({ media: 'print' });
        await page.setViewportSize(paper);
        await page.evaluate(() => (document.documentElement.dataset.print = 'bench'));
        await see(part(page, 'bench').locator('.boxes').first(), 'boxes to write in');
        equal(await page.locator('[data-finding]').first().isVisible(), false, 'a finding on the bench list');
        await page.evaluate(() => (document.documentElement.dataset.print = 'cards'));
        for (const card of await part(page, 'cards').locator('[data-card]').all()) {
          const { height } = await card.boundingBox();
          if (height > paper.height) throw new Error(`a card of ${String(height)} px does not fit its page`);
        }
        // A sheet of cards has a heading on each card, and none over all of them.
        const hard = (await hardToUse(page)).filter((fault) => !fault.startsWith('page-has-heading-one'));
        equal(hard.join('; '), '', 'cards on paper');
        await page.evaluate(() => delete document.documentElement.dataset.print);
        await page.emulateMedia({ media: 'screen' });
        await page.setViewportSize({ width: 390, height: 844 });
      },
    ],
  ];
}

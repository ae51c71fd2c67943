import { describe, equal, hardToUse, see } from './browser.mjs';
import { fits } from './page.mjs';

const box = (page, path) => page.locator(`[data-entry="model.mass.${path}"] input`);
const part = (page, name) => page.locator(`[data-sheet="${name}"]`);

/** Opens a part of the sheet, whatever it was. */
async function open(page, name) {
  await see(part(page, name), `part ${name} of the sheet`);
  if (!(await part(page, name).evaluate((e) => e.open)))
    await part(page, name).locator('summary').first().click();
}

/** Waits until what a key opened is drawn. */
const settled = (page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 20))));

async function openSandmartin(page) {
  await page.goto('/approvals');
  await page.locator('a', { hasText: 'Sandmartin' }).first().click();
  await see(page.locator('[data-finding]'), 'findings');
}

/** Three scales under the model: reading, place aft, place to starboard. */
const scales = [
  ['1.5', '0.3', '0'],
  ['2.95', '1.1', '-0.3'],
  ['2,95', '1.1', '0.3'],
];

/** What was drawn and computed of a model, the chain behind each number, and the weigh-in. */
export function sheetTests({ phone }) {
  const shared = {};
  return [
    [
      'the chain behind a finding opens step by step down to a measured input',
      async () => {
        const page = await phone('Tomas Lind');
        shared.tomas = page;
        await openSandmartin(page);
        const row = page.locator('[data-finding="stall.speed"]');
        if (!(await row.isVisible())) await page.locator('summary', { hasText: 'hold' }).first().click();
        await row.locator('summary', { hasText: 'How this was computed' }).click();
        const chain = row.locator('[data-chain]');
        await chain.locator('summary').first().press('Enter');
        await settled(page);
        const measured = chain.locator('[data-step="input"]', { hasText: 'measured' });
        for (let depth = 0; depth < 40 && (await measured.count()) === 0; depth++) {
          const shut = chain.locator('[data-step="quantity"] > details:not([open]) > summary').first();
          if ((await shut.count()) === 0) break;
          await shut.press('Enter');
          await settled(page);
        }
        await see(measured, 'a measured input at the end of the chain');
        await see(chain.locator('.formula'), 'a formula');
      },
    ],
    [
      'every drawing of the model has a sentence, a drawing and a table',
      async () => {
        const page = shared.tomas;
        for (const name of ['model', 'lift', 'balance']) {
          await open(page, name);
          const figures = part(page, name).locator('figure');
          await see(figures, `a drawing of part ${name}`);
          for (const figure of await figures.all()) {
            const title = await figure.locator('h3').textContent();
            await see(figure.locator('svg[role=img]'), `the drawing ${title}`);
            await figure.getByRole('button', { name: 'Show as a table' }).click();
            if ((await figure.locator('tbody tr').count()) < 2) throw new Error(`no table of ${title}`);
          }
        }
        await page.setViewportSize({ width: 360, height: 740 });
        equal((await hardToUse(page)).join('; '), '', 'tables');
        await page.setViewportSize({ width: 390, height: 844 });
        for (const name of ['model', 'lift', 'balance']) {
          const back = part(page, name).getByRole('button', { name: 'Show as a drawing' });
          while ((await back.count()) > 0) await back.first().click();
        }
        const curves = await page
          .locator('[data-curve]')
          .evaluateAll((all) => all.map((e) => e.dataset.curve));
        for (const id of ['lift.curve', 'drag.polar', 'lift.span_loading', 'trim.elevator', 'balance.burn'])
          equal(curves.includes(id), true, `curve ${id}`);
        await see(page.locator('[data-breakdown]'), 'parts of the drag');
      },
    ],
    [
      'a quantity is found by a word of its name',
      async () => {
        const page = shared.tomas;
        await open(page, 'quantities');
        const list = page.locator('[data-quantities]');
        await see(list.locator('[data-ref]'), 'quantities');
        const all = await list.locator('[data-ref]').count();
        await list.locator('input').fill('neutral');
        await see(list.locator('[data-ref="lift.neutral_point"]'), 'the neutral point');
        const found = await list.locator('[data-ref]').count();
        if (found === 0 || found >= all) throw new Error(`found ${found} of ${all}`);
      },
    ],
    [
      'everything opened is easy to use on light and dark ground and with more contrast, and fits 360 px',
      async () => {
        const page = shared.tomas;
        for (const media of [
          { colorScheme: 'light', contrast: null },
          { colorScheme: 'dark', contrast: null },
          { colorScheme: 'light', contrast: 'more' },
        ]) {
          await page.emulateMedia(media);
          equal((await hardToUse(page)).join('; '), '', JSON.stringify(media));
        }
        await page.setViewportSize({ width: 360, height: 740 });
        await fits(page, 'the page');
        await page.context().close();
      },
    ],
    [
      'three scales give mass and balance as they are typed',
      async () => {
        const page = await phone('Ada Thorne');
        shared.ada = page;
        await describe(page, 'redshank_quarry_top');
        await page.locator('input[name=name]').fill('Redshank on the scales');
        await page.locator('[data-list="scales"] > summary').click();
        for (const [i, [reading, x, y]] of scales.entries()) {
          await page.getByRole('button', { name: 'Add a scale' }).click();
          await box(page, `scaleReadings.${i}.readingKg`).fill(reading);
          await box(page, `scaleReadings.${i}.xMeters`).fill(x);
          await box(page, `scaleReadings.${i}.yMeters`).fill(y);
        }
        await page.getByRole('button', { name: 'Let the scales decide' }).click();
        equal(await box(page, 'emptyMassKg').inputValue(), '', 'typed mass');
        const mass = page.locator('[data-quantity="mass.empty"]');
        await see(mass.getByText('7.400 kg'), 'mass of 7.4 kg');
        // (1.5 x 0.3 + 5.9 x 1.1) / 7.4
        const place = page.locator('[data-quantity="balance.empty_x"]');
        await see(place.getByText('0.938 m'), 'balance at 0.938 m');
        await box(page, 'scaleReadings.2.tareKg').fill('0.1');
        await see(mass.getByText('7.300 kg'), 'mass less tare');
      },
    ],
    [
      'a wrong input of the weigh-in names its field and loses nothing',
      async () => {
        const page = shared.ada;
        const tare = box(page, 'scaleReadings.1.tareKg');
        await tare.fill('12 g');
        await see(
          page.locator('[role=alert]', { hasText: 'scale 2, Tare: write a number.' }),
          'the named box',
        );
        equal(await tare.inputValue(), '12 g', 'what was typed');
        await page.locator('[data-row$="scaleReadings.1"]').getByRole('button', { name: 'Up' }).click();
        equal(await box(page, 'scaleReadings.0.tareKg').inputValue(), '12 g', 'what was typed after a move');
        await page.getByRole('button', { name: 'Undo' }).click();
        await box(page, 'scaleReadings.1.tareKg').fill('');
        await box(page, 'scaleReadings.1.readingKg').fill('-2.95');
        const refused = page.locator('[data-weigh-result] .notice');
        await see(refused, 'the refusal');
        await see(
          page.locator('[data-entry="model.mass.scaleReadings.1.readingKg"] .fault'),
          'the refusal at its box',
        );
        await see(page.locator('[data-kept]', { hasText: 'Kept on this device' }), 'kept state');
        await page.reload();
        await page.locator('[data-list="scales"] > summary').click();
        equal(await box(page, 'scaleReadings.1.readingKg').inputValue(), '-2.95', 'reading after a reload');
        equal(await box(page, 'scaleReadings.2.xMeters').inputValue(), '1.1', 'place after a reload');
        await box(page, 'scaleReadings.1.readingKg').fill('2.95');
        await see(page.locator('[data-quantity="mass.empty"]', { hasText: '7.300 kg' }), 'mass again');
      },
    ],
    [
      'a removed scale comes back by undo, and the open form is easy to use',
      async () => {
        const page = shared.ada;
        const rows = page.locator('[data-list="scales"] [data-row]');
        await page.getByRole('button', { name: 'Remove: scale 3' }).click();
        equal(await rows.count(), 2, 'scales after a removal');
        await page.getByRole('button', { name: 'Undo' }).click();
        equal(await rows.count(), 3, 'scales after undo');
        for (const colorScheme of ['light', 'dark']) {
          await page.emulateMedia({ colorScheme });
          equal((await hardToUse(page)).join('; '), '', `form on ${colorScheme} ground`);
        }
        await page.setViewportSize({ width: 360, height: 740 });
        await fits(page, 'the page');
        await page.context().close();
      },
    ],
  ];
}

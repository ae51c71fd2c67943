import { describe, see } from './browser.mjs';

const box = (page, path) => page.locator(`[data-entry="${path}"] input`).first();
const byDevice = (page) => page.locator('[data-place=device]');

/** Types a number and returns how long its findings took, in ms as the page counts it. */
async function change(page, path, value) {
  const figure = page.locator('[data-finding="stall.speed"] .figure, [data-finding="stall.speed"]').first();
  const before = await figure.textContent();
  await box(page, path).fill(value);
  await page.waitForFunction(
    ([text]) => {
      const now = document.querySelector(
        '[data-finding="stall.speed"] .figure, [data-finding="stall.speed"]',
      );
      const live = document.querySelector('#live');
      return live?.getAttribute('aria-busy') === 'false' && now && now.textContent !== text;
    },
    [before],
    { timeout: 60000 },
  );
  return Number(await page.locator('[data-took]').getAttribute('data-took'));
}

/** The core on the device: it answers with the server gone, and as the server would. */
export function coreTests({ phone }) {
  const shared = {};
  return [
    [
      'the core of the device takes over once it is loaded',
      async () => {
        const page = await phone('Tomas Lind');
        shared.page = page;
        await describe(page, 'redshank_quarry_top');
        await page.evaluate(() => navigator.serviceWorker.ready);
        for (let mass = 4.1; mass < 5 && (await byDevice(page).count()) === 0; mass += 0.01)
          await change(page, 'model.mass.emptyMassKg', mass.toFixed(2));
        await see(byDevice(page), 'findings of the device');
      },
    ],
    [
      'with the server gone a changed number changes the findings',
      async () => {
        const page = shared.page;
        await page.context().setOffline(true);
        const took = [];
        for (const mass of ['4.2', '4.25', '4.3', '4.35', '4.4', '4.45'])
          took.push(await change(page, 'model.mass.emptyMassKg', mass));
        await see(byDevice(page), 'findings of the device');
        console.log(`     a changed number took ${took.join(', ')} ms`);
      },
    ],
    [
      'a page opened with the server gone starts its core and computes',
      async () => {
        const page = shared.page;
        await page.reload();
        await see(byDevice(page), 'findings of the device after a start without a server');
        await page.context().setOffline(false);
      },
    ],
  ];
}

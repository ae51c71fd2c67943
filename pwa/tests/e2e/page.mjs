import { gzipSync } from 'node:zlib';
import { equal, hardToUse, rest, see } from './browser.mjs';

const pages = ['/waiting', '/models', '/models/new', '/approvals', '/incidents', '/incidents/new'];

/** Controls lower or narrower than 48 px; boxes to tick stand in a label that is tall enough. */
const smallControls = () =>
  [...document.querySelectorAll('button, a, input, select, textarea, summary')]
    .map((e) => (e.matches('input[type=checkbox], input[type=radio]') ? (e.closest('label') ?? e) : e))
    .filter((e) => e.checkVisibility() && !e.matches('.skip'))
    .map((e) => [e.textContent.trim().slice(0, 30) || e.tagName, e.getBoundingClientRect()])
    .filter(([, r]) => r.height < 48)
    .map(([name, r]) => `${name} ${r.height.toFixed(0)} px`);

/** Wants a page to be no wider than its window, and every control to be large enough. */
export async function fits(page, what) {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  equal(Math.max(0, over), 0, `overflow of ${what}`);
  equal((await page.evaluate(smallControls)).join('; '), '', `small controls of ${what}`);
}

/** Wants a page to fit, and to pass the automatic accessibility rules. */
export async function usable(page, what) {
  await fits(page, what);
  equal((await hardToUse(page)).join('; '), '', `${what} for an automatic reader`);
}

/** What holds for every page, whoever looks at it. */
export function pageTests({ phone, faults }) {
  return [
    [
      'a wrong password is refused in words with a request id',
      async () => {
        const page = await phone();
        await page.locator('input[name=club]').fill('larkmoor');
        await page.locator('input[name=email]').fill('ada@larkmoor.example');
        await page.locator('input[name=password]').fill('wrong');
        await page.locator('form button[type=submit]').click();
        await see(page.locator('[data-trouble]', { hasText: 'quote request' }), 'the refusal');
        await page.context().close();
      },
    ],
    [
      'every page fits 360 px and every control is at least 48 px high',
      async () => {
        const page = await phone('Ines Valdez');
        await page.setViewportSize({ width: 360, height: 740 });
        for (const path of pages) {
          await page.goto(path);
          await see(page.locator('main h1'), `heading of ${path}`);
          await fits(page, path);
        }
        await page.context().close();
      },
    ],
    [
      'every page passes the automatic accessibility rules on light and on dark ground',
      async () => {
        const page = await phone('Mei Castellan');
        const first = async (kind) =>
          (await rest(page, 'GET', `/v1/clubs/larkmoor/${kind}`)).body[kind][0].name.split('/').pop();
        const paths = [
          '/approvals',
          `/approvals/${await first('approvals')}`,
          `/incidents/${await first('incidents')}`,
        ];
        for (const colorScheme of ['light', 'dark']) {
          await page.emulateMedia({ colorScheme });
          for (const path of [...paths, '/models/new', '/incidents/new', '/incidents']) {
            await page.goto(path);
            await see(page.locator('main h1'), `heading of ${path}`);
            equal((await hardToUse(page)).join('; '), '', `${path} on ${colorScheme} ground`);
          }
        }
        await page.context().close();
      },
    ],
    [
      'the first view brings at most 60 kB of script and style',
      async () => {
        const page = await phone('Ines Valdez');
        await page.goto('/');
        await see(page.locator('main h1'), 'the first page');
        const files = await page.evaluate(async () => {
          const names = performance.getEntriesByType('resource').map((e) => e.name);
          const wanted = [...new Set(names)].filter((name) => /\.(js|css)$/.test(new URL(name).pathname));
          return Promise.all(wanted.map(async (name) => [name, await (await fetch(name)).text()]));
        });
        const own = files.filter(([name]) => !name.endsWith('/sw.js'));
        const size = own.reduce((sum, [, text]) => sum + gzipSync(text).length, 0);
        if (own.length < 3 || size > 60000)
          throw new Error(`${String(own.length)} files, ${String(size)} bytes`);
        console.log(`     first view: ${String(own.length)} files, ${String(size)} bytes packed`);
        await page.context().close();
      },
    ],
    [
      'back leads to the former page, and an unknown address says so',
      async () => {
        const page = await phone('Ada Thorne');
        await page.getByRole('link', { name: 'Incidents' }).click();
        await see(page.getByRole('heading', { name: 'Incidents' }), 'incidents');
        await page.goBack();
        await see(page.getByRole('heading', { name: 'My models' }), 'models again');
        await page.goto('/nothing/here');
        await see(page.getByText('There is no page at this address.'), 'word of the missing page');
        await page.context().close();
      },
    ],
    [
      'the page opens without a connection and says so',
      async () => {
        const page = await phone('Ada Thorne');
        await page.evaluate(() => navigator.serviceWorker.ready);
        await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
        await page.context().setOffline(true);
        await page.reload();
        await see(page.getByText('No connection to the club’s server.'), 'word of the missing connection');
        await see(page.locator('.who').getByText('Ada Thorne'), 'the person');
        await page.context().close();
      },
    ],
    [
      'no page reported a fault or broke the content policy',
      () => {
        equal(faults.join('; '), '', 'faults');
      },
    ],
  ];
}

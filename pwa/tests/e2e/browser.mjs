import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const base = process.env.PITGATE_URL ?? 'http://localhost:8080';

/** Password of every person of the demonstration. */
export const password = 'larkmoor demo password';

/** The file of a demonstration document. */
export const demo = (name) => new URL(`../../../testdata/demo/${name}.json`, import.meta.url).pathname;

/** Opens the form for a new model with a demonstration document in it, and waits for its findings. */
export async function describe(page, name) {
  await page.goto('/models/new');
  await page.locator('input[type=file]').setInputFiles(demo(name));
  await see(page.locator('[data-finding]'), 'findings');
}

/** Starts one browser and opens phones in it; every fault the pages report is collected. */
export async function startBrowser() {
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: flags });
  const faults = [];

  function watch(page) {
    page.on('pageerror', (error) => faults.push(`${page.url()}: ${error.message}`));
    page.on('console', (message) => {
      if (/content security policy|refused to/i.test(message.text())) faults.push(message.text());
    });
    return page;
  }

  /** A phone of 390 by 844 on which the named person is signed in. */
  async function phone(person) {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, baseURL: base });
    context.setDefaultTimeout(15000);
    const page = watch(await context.newPage());
    await page.goto('/');
    if (person) {
      await page.locator(`[data-person="${person}"]`).click();
      await page.locator('.who').getByText(person).waitFor();
    }
    return page;
  }

  /** A second tab of the same person. */
  const tab = async (page) => watch(await page.context().newPage());

  return { phone, tab, faults, close: () => browser.close() };
}

/** Waits until a locator matches, and says what was missing when it never does. */
export async function see(locator, what) {
  await locator
    .first()
    .waitFor({ state: 'visible' })
    .catch(() => {
      throw new Error(`not seen: ${what}`);
    });
}

/** Sends one request as the person signed in on the page. */
export function rest(page, method, path, body) {
  return page.evaluate(
    async ([m, p, b]) => {
      const answer = await fetch(p, {
        method: m,
        headers: { 'content-type': 'application/json' },
        ...(b === null ? {} : { body: JSON.stringify(b) }),
      });
      return { status: answer.status, body: await answer.json().catch(() => null) };
    },
    [method, path, body ?? null],
  );
}

export function equal(found, wanted, what) {
  if (found !== wanted) throw new Error(`${what}: found ${String(found)}, wanted ${String(wanted)}`);
}

/** What an automatic reader of the page finds hard to use, contrast of 7 to 1 included; one line a kind. */
export async function hardToUse(page) {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    // A line that sticks to the lower edge hides a part of whatever control happens to lie there; scrolling brings it out.
    for (const bar of document.querySelectorAll('.counts')) bar.style.position = 'static';
    const rules = { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } };
    const { violations } = await window.axe.run(document, { rules });
    return violations.map((v) => `${v.id}: ${v.nodes[0].target.join(' ')} (${v.nodes.length})`);
  });
}

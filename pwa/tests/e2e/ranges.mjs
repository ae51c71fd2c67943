import { readFileSync } from 'node:fs';
import { demo, describe, equal, hardToUse, rest, see } from './browser.mjs';

const entry = (page, path) => page.locator(`[data-entry="${path}"]`).first();
const box = (page, path) => entry(page, path).locator('input').first();
const rails = 'launchPlan.ramp.lengthMeters';
const others = [
  'launchPlan.ramp.angleDegrees',
  'model.mass.emptyMassKg',
  'day.windSpeedMetersPerSecond',
  'day.qnhPascals',
];

const values = (page) => Promise.all(others.map((path) => box(page, path).inputValue()));

/** Numbers that nothing in the world can have are refused where they are typed, and nothing else is lost. */
export function rangeTests({ phone }) {
  const shared = {};
  return [
    [
      'a ramp of -5 m is refused at its box and in the summary, and all else that was typed stays',
      async () => {
        const page = await phone('Ada Thorne');
        shared.page = page;
        await describe(page, 'redshank_quarry_top');
        shared.rails = await box(page, rails).inputValue();
        await box(page, 'day.windSpeedMetersPerSecond').fill('4.5');
        const before = await values(page);
        await box(page, rails).fill('-5');
        await see(
          entry(page, rails).locator('.fault', { hasText: 'must be at least 0.1, got -5' }),
          'the refusal at the box',
        );
        equal(await box(page, rails).getAttribute('aria-invalid'), 'true', 'the mark of the box');
        await see(
          page.locator('#live .notice li', { hasText: 'Ramp length: in m, must be at least 0.1, got -5' }),
          'the refusal in the summary',
        );
        equal((await values(page)).join(' '), before.join(' '), 'what was typed beside it');
        equal(await box(page, rails).inputValue(), '-5', 'what was typed in it');
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        equal(Math.max(0, over), 0, 'overflow');
        equal((await hardToUse(page)).join('; '), '', 'the form with a refusal');
      },
    ],
    [
      'a mass typed in grams is asked for its unit, and a number within its range takes the refusal away',
      async () => {
        const page = shared.page;
        const mass = 'model.mass.emptyMassKg';
        const kept = await box(page, mass).inputValue();
        await box(page, mass).fill('4500');
        await see(
          entry(page, mass).locator('.fault', { hasText: 'in g? That is 4.5 kg' }),
          'the question for the unit',
        );
        await box(page, mass).fill(kept);
        await box(page, rails).fill(shared.rails);
        await entry(page, rails).locator('.fault').waitFor({ state: 'detached' });
        await page.locator('#live .notice').waitFor({ state: 'detached' });
        await see(page.locator('#live [data-finding]'), 'findings again');
        equal(await box(page, 'day.windSpeedMetersPerSecond').inputValue(), '4.5', 'the wind');
      },
    ],
    [
      'the server refuses the same number over REST and names its path',
      async () => {
        const page = shared.page;
        const input = JSON.parse(readFileSync(demo('redshank_quarry_top'), 'utf8'));
        input.launchPlan.ramp.lengthMeters.value = -5;
        const { status, body } = await rest(page, 'POST', '/v1/clubs/larkmoor/assessments:preview', input);
        equal(status, 400, 'status');
        equal(
          JSON.stringify(body.fieldViolations),
          JSON.stringify([{ field: `${rails}.value`, description: 'must be at least 0.1, got -5' }]),
          'faults',
        );
        await page.context().close();
      },
    ],
  ];
}

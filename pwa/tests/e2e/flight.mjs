import { describe, equal, hardToUse, see } from './browser.mjs';
import { fits } from './page.mjs';

const good = 'METAR XLRK 161020Z 05006KT 9999 FEW030 14/05 Q1019';
const wrong = 'METAR XLRK 161020Z 050K6KT 9999 FEW030 14/05 Q1019';
const box = (page, path) => page.locator(`[data-entry="${path}"] input`);
const part = (page, name) => page.locator(`[data-sheet="${name}"]`);

/** What a launch of the heavy jet needs beside its place. */
const launchers = {
  RAMP: {
    'ramp.lengthMeters': '12',
    'ramp.angleDegrees': '7',
    'ramp.endHeightMeters': '1.6',
    'ramp.dollyMassKg': '1.2',
    'ramp.frictionRatio': '0.05',
    'ramp.cradleDegrees': '6',
    'ramp.tailXMeters': '2.1',
    'ramp.tailHeightMeters': '0.2',
  },
  BUNGEE: {
    'bungee.stiffnessNewtonsPerMeter': '25',
    'bungee.stretchMeters': '20',
    'bungee.efficiencyRatio': '0.8',
    'bungee.cordMassKg': '0.6',
    'bungee.frictionRatio': '0.2',
  },
  HAND: { handSpeedMetersPerSecond: '8', handHeightMeters: '1.8' },
};

/** Opens a part of a sheet, whatever it was. */
async function open(page, name) {
  await see(part(page, name), `part ${name} of the sheet`);
  if (!(await part(page, name).evaluate((e) => e.open)))
    await part(page, name).locator('summary').first().click();
}

/** What must hold for all that is open on a page. */
async function usableOnAnyGround(page, what) {
  for (const media of [{ colorScheme: 'light' }, { colorScheme: 'dark' }]) {
    await page.emulateMedia(media);
    equal((await hardToUse(page)).join('; '), '', `${what} on ${media.colorScheme} ground`);
  }
  await page.setViewportSize({ width: 360, height: 740 });
  await fits(page, what);
  await page.setViewportSize({ width: 390, height: 844 });
}

/** The day from a pasted report, where a flight goes and comes down, winds that hold, and launches compared. */
export function flightTests({ phone }) {
  const shared = {};
  return [
    [
      'a pasted report that is not understood is named by its group and loses nothing',
      async () => {
        const page = await phone('Ada Thorne');
        shared.ada = page;
        await describe(page, 'sandmartin_long_acre');
        const before = await box(page, 'day.windSpeedMetersPerSecond').inputValue();
        await page.locator('textarea[name=metar]').fill(wrong);
        await page.getByRole('button', { name: 'Fill the boxes from it' }).click();
        await see(page.locator('[data-not-understood]', { hasText: '050K6KT' }), 'the group');
        equal(await page.locator('textarea[name=metar]').inputValue(), wrong, 'the report in its box');
        equal(await box(page, 'day.windSpeedMetersPerSecond').inputValue(), before, 'the wind');
      },
    ],
    [
      'a pasted report fills the day with its basis, and one undo takes all of it back',
      async () => {
        const page = shared.ada;
        const paths = [
          'day.windSpeedMetersPerSecond',
          'day.windDirectionDegrees',
          'day.temperatureCelsius',
          'day.qnhPascals',
          'day.dewPointCelsius',
        ];
        const values = () => Promise.all(paths.map((path) => box(page, path).inputValue()));
        const before = await values();
        await page.locator('textarea[name=metar]').fill(good);
        await page.getByRole('button', { name: 'Fill the boxes from it' }).click();
        await see(
          page.locator('[data-filled]', { hasText: 'pressure at sea level (QNH)' }),
          'what was filled',
        );
        await see(page.locator('[data-filled]', { hasText: 'wind, highest gust' }), 'what stays');
        // 6 kt in m/s, to the digits its spread tells apart
        equal((await values()).join(' '), '3.087 50 14 1019 5', 'the day');
        const basis = page.locator('[data-entry="day.qnhPascals"] select');
        equal(await basis.inputValue(), 'BASIS_MEASURED', 'basis of the pressure');
        await page.getByRole('button', { name: 'Undo', exact: true }).click();
        equal((await values()).join(' '), before.join(' '), 'the day after undo');
        equal(await page.locator('textarea[name=metar]').inputValue(), good, 'the report after undo');
      },
    ],
    [
      'later winds are added, kept over a reload, and removed',
      async () => {
        const page = shared.ada;
        const winds = page.locator('[data-list="winds"]');
        await winds.locator('summary').click();
        await winds.getByRole('button', { name: 'Add a later wind' }).click();
        await winds.locator('input[type=datetime-local]').fill('2026-05-16T14:00');
        await box(page, 'day.windChanges.0.windSpeedMetersPerSecond').fill('6.5');
        await see(page.locator('[data-kept]', { hasText: 'Kept on this device' }), 'kept state');
        await page.reload();
        await winds.locator('summary').click();
        equal(await box(page, 'day.windChanges.0.windSpeedMetersPerSecond').inputValue(), '6.5', 'the wind');
        await winds.getByRole('button', { name: 'Remove Wind 1' }).click();
        equal(await winds.locator('fieldset').count(), 0, 'winds after removal');
      },
    ],
    [
      'the field’s terms, the landing plan and the fail-safe stand in the form',
      async () => {
        const page = shared.ada;
        await see(page.locator('[data-terms]', { hasText: '120 m' }), 'the height limit of the field');
        await page.locator('[data-list="landing"] > summary').click();
        await box(page, 'launchPlan.landing.approachAngleDegrees').fill('6');
        await see(
          page.locator('[data-finding="landing.distance"]', { hasText: 'down 6.0 degrees' }),
          'slope',
        );
        await page.locator('select[name=failSafe]').selectOption('FAIL_SAFE_ACTION_CUT_SPIRAL');
        await box(page, 'model.radio.failSafeDelaySeconds').fill('0.8');
        await see(page.locator('[data-kept]', { hasText: 'Kept on this device' }), 'kept state');
      },
    ],
    [
      'the same launch by five methods stands side by side, and what is missing is named',
      async () => {
        const page = shared.ada;
        const compare = page.locator('[data-compare]');
        const way = (method) => compare.locator(`[data-way="LAUNCH_METHOD_${method}"]`);
        await compare.getByRole('button', { name: 'Compare the five ways' }).click();
        await see(way('HAND'), 'the five ways');
        equal(await compare.locator('[data-way]').count(), 5, 'ways');
        await see(way('BUNGEE').locator('[data-lacks]', { hasText: 'bungee stiffness' }), 'what it lacks');
        for (const [method, numbers] of Object.entries(launchers)) {
          await page.locator('select[name=method]').selectOption(`LAUNCH_METHOD_${method}`);
          for (const [path, value] of Object.entries(numbers))
            await box(page, `launchPlan.${path}`).fill(value);
        }
        await page.locator('select[name=method]').selectOption('LAUNCH_METHOD_WHEELS');
        await see(compare.getByText('compare again'), 'word that it is old');
        await compare.getByRole('button', { name: 'Compare again' }).click();
        for (const method of ['WHEELS', 'RAMP', 'BUNGEE', 'HAND'])
          for (const question of ['launch.end_speed', 'climb.clearance'])
            await see(way(method).locator(`[data-question="${question}"] svg`), `${question} of ${method}`);
        equal(await compare.locator('[data-lacks]').count(), 1, 'ways that lack something');
        await see(way('CATAPULT').locator('[data-lacks]', { hasText: 'forces of a catapult' }), 'its forces');
      },
    ],
    [
      'landing and stopped engine are drawn and found, and told apart without colour',
      async () => {
        const page = shared.ada;
        await open(page, 'plan');
        const plan = part(page, 'plan');
        await see(plan.locator('[data-footprint="area.engine_out"]'), 'footprint of a stopped engine');
        await see(plan.locator('[data-plan-key]', { hasText: 'engine stopped' }), 'its name');
        await see(plan.locator('[data-landing]'), 'landing path');
        await open(page, 'landing');
        await see(part(page, 'landing').locator('[data-side-view="landing"] svg'), 'landing from the side');
        await open(page, 'failures');
        await see(part(page, 'failures').locator('[data-line="engine_out.reach"]'), 'finding on reach');
        await see(part(page, 'failures').locator('[data-curve="engine_out.turn_back"]'), 'turn-back curve');
        await usableOnAnyGround(page, 'the open field sheet');
      },
    ],
    [
      'a lost link is found, drawn and named',
      async () => {
        const page = shared.ada;
        await see(part(page, 'failures').locator('[data-line="link_loss.footprint"]'), 'finding');
        for (const share of ['50', '95'])
          await see(
            part(page, 'plan').locator(`[data-footprint="area.link_loss_${share}"]`),
            `footprint of ${share} %`,
          );
      },
    ],
    [
      'the winds that hold are worked out when asked for, drawn, and given as a table',
      async () => {
        const page = shared.ada;
        await open(page, 'wind');
        const wind = part(page, 'wind');
        await wind.getByRole('button', { name: 'Work out the winds that hold' }).click();
        await see(wind.locator('progress'), 'progress');
        await wind.locator('[data-rose] svg').waitFor({ timeout: 60000 });
        await see(wind.locator('figure p', { hasText: 'The day’s wind' }), 'the sentence');
        await wind.getByRole('button', { name: 'Show as a table' }).click();
        const rows = await wind.locator('tbody tr').count();
        if (rows < 16) throw new Error(`only ${String(rows)} rows`);
        await usableOnAnyGround(page, 'the winds as a table');
        await page.context().close();
      },
    ],
    [
      'an officer sees landing and stopped engine on the approval',
      async () => {
        const page = await phone('Tomas Lind');
        await page.goto('/approvals');
        await page.locator('a', { hasText: 'Sandmartin' }).first().click();
        for (const name of ['plan', 'launch', 'landing', 'failures']) await open(page, name);
        await see(part(page, 'plan').locator('svg[role=img]'), 'field plan');
        await see(part(page, 'failures').locator('[data-line]'), 'findings of what stops');
        await see(page.locator('[data-terms]'), 'the field’s terms');
        await usableOnAnyGround(page, 'the approval with its field sheet');
        await page.context().close();
      },
    ],
  ];
}

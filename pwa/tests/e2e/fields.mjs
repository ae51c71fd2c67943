import { readFileSync } from 'node:fs';
import { equal, hardToUse, rest, see } from './browser.mjs';
import { fits } from './page.mjs';

const listed = async (page, name) => {
  const { body } = await rest(page, 'GET', '/v1/clubs/larkmoor/fields?pageSize=100');
  return body.fields.find((f) => f.displayName === name);
};
const idOf = (field) => field.name.split('/').pop();

async function openForm(page, name) {
  await page.goto(`/fields/${idOf(await listed(page, name))}/change`);
  await see(page.locator('[data-plan] svg'), 'the plan to draw on');
}

/** Parts of a description: all that have a name, the flying area and the pilot. */
const partCount = ({ description }) => (JSON.stringify(description).match(/"name":/g) ?? []).length + 2;

/** The box of a coordinate, by its path in the description. */
const box = (page, path) => page.locator(`[data-entry="${path}"] input`).first();

async function choose(page, path) {
  const button = page.locator(`[data-choose="${path}"]`);
  if ((await button.getAttribute('aria-expanded')) !== 'true') await button.click();
  await see(page.locator(`[data-part="${path}"]`), `the boxes of ${path}`);
}

async function wantBox(page, path, wanted, what) {
  await page
    .waitForFunction(
      ([p, v]) => document.querySelector(`[data-entry="${p}"] input`)?.value === v,
      [path, wanted],
      { timeout: 5000 },
    )
    .catch(async () => equal(await box(page, path).inputValue(), wanted, what));
}

/** Fields: shown whole, drawn, typed, walked, read and kept. */
export function fieldTests({ phone }) {
  const shared = {};
  return [
    [
      'both fields show every part, on the plan and in the table',
      async () => {
        const page = await phone('Ada Thorne');
        for (const name of ['Long Acre', 'Quarry Top']) {
          const field = await listed(page, name);
          const { strips = [], launchSpots = [] } = field.description;
          const parts = partCount(field);
          await page.goto('/fields');
          await page.locator(`[data-field="${name}"]`).click();
          await see(page.getByRole('heading', { name, level: 1 }), name);
          await see(page.locator('[data-parts] tbody tr'), 'the table of parts');
          equal(await page.locator('[data-parts] tbody tr').count(), parts, `parts of ${name}`);
          equal(
            await page.locator('figure').first().locator('.key li').count(),
            parts - 2 - strips.length - launchSpots.length,
            `key of ${name}`,
          );
          equal(await page.locator('figure svg').count(), 2, `plans of ${name}`);
        }
        equal(await page.getByRole('link', { name: 'Change the field' }).count(), 0, 'ways in for a member');
        const field = await listed(page, 'Long Acre');
        const refused = await rest(page, 'PATCH', `/v1/${field.name}?updateMask=display_name`, {
          displayName: 'Mine',
          etag: field.etag,
        });
        equal(refused.status, 403, 'a member’s change');
        await page.context().close();
      },
    ],
    [
      'a corner moves by keys, a metre or a tenth a step, and every step can be taken back and done again',
      async () => {
        const page = await phone('Mei Castellan');
        shared.mei = page;
        await openForm(page, 'Long Acre');
        await choose(page, 'obstacles.0');
        const handle = page.locator('[data-handle="obstacles.0.points.0"]');
        const size = await handle.locator('.reach').boundingBox();
        if (size.width < 48 || size.height < 48)
          throw new Error(`a corner is ${size.width.toFixed(0)} px wide`);
        await handle.focus();
        await page.keyboard.press('ArrowRight');
        await page.keyboard.press('ArrowRight');
        await wantBox(page, 'obstacles.0.points.0.xMeters', '206.74', 'east after two steps');
        await page.keyboard.press('Shift+ArrowDown');
        await wantBox(page, 'obstacles.0.points.0.yMeters', '37.28', 'north after a small step');
        if (!(await handle.getAttribute('aria-label')).includes('east hedge, corner 1'))
          throw new Error('the corner does not say what it is');
        await page.getByRole('button', { name: 'Undo' }).click();
        await wantBox(page, 'obstacles.0.points.0.xMeters', '204.74', 'east after undo');
        await page.getByRole('button', { name: 'Redo' }).click();
        await wantBox(page, 'obstacles.0.points.0.xMeters', '206.74', 'east after redo');
      },
    ],
    [
      'a dragged corner is one step, and survives a reload',
      async () => {
        const page = shared.mei;
        const handle = page.locator('[data-handle="obstacles.0.points.1"] .knob');
        await handle.scrollIntoViewIfNeeded();
        const before = await box(page, 'obstacles.0.points.1.xMeters').inputValue();
        const at = await handle.boundingBox();
        const [x, y] = [at.x + at.width / 2, at.y + at.height / 2];
        await page.mouse.move(x, y);
        await page.mouse.down();
        for (let i = 1; i <= 6; i++) await page.mouse.move(x + 5 * i, y);
        await page.mouse.up();
        const after = await box(page, 'obstacles.0.points.1.xMeters').inputValue();
        if (!(Number(after) > Number(before) + 20)) throw new Error(`dragged from ${before} to ${after}`);
        await page.getByRole('button', { name: 'Undo' }).click();
        await wantBox(page, 'obstacles.0.points.1.xMeters', before, 'east after undo');
        await page.getByRole('button', { name: 'Redo' }).click();
        await see(page.locator('[data-kept]', { hasText: 'Kept on this device' }), 'kept draft');
        await page.reload();
        await see(page.getByText('Your draft from this device was restored.'), 'restored draft');
        await choose(page, 'obstacles.0');
        await wantBox(page, 'obstacles.0.points.1.xMeters', after, 'east after a reload');
      },
    ],
    [
      'latitude and longitude lead to the same metres, and wrong input stays to be mended',
      async () => {
        const page = shared.mei;
        await choose(page, 'pilotPosition');
        await page.locator('select[name=coordinates]').selectOption('degrees');
        const latitude = box(page, 'pilotPosition.latitude');
        const before = await latitude.inputValue();
        await latitude.fill('54 north');
        await see(page.getByText('write a number'), 'word of the wrong number');
        equal(await latitude.inputValue(), '54 north', 'what was typed');
        await latitude.fill(String(Number(before) + 0.0001));
        await page.locator('select[name=coordinates]').selectOption('metres');
        const north = Number(await box(page, 'pilotPosition.yMeters').inputValue());
        // A ten-thousandth of a degree of latitude is 11.13 m at 54 degrees north.
        if (Math.abs(north - (-19.05 + 11.13)) > 0.03) throw new Error(`north is ${String(north)} m`);
      },
    ],
    [
      'an outline that crosses itself is named with its corners and not kept; nothing is lost',
      async () => {
        const page = shared.mei;
        await choose(page, 'flyingArea');
        await box(page, 'flyingArea.corners.1.xMeters').fill('-600');
        await box(page, 'flyingArea.corners.1.yMeters').fill('500');
        const remark = page.locator('[data-remark="flyingArea"]', { hasText: 'crosses itself' });
        await see(remark, 'the fault');
        await page.getByRole('button', { name: 'Keep as the next version' }).click();
        await see(page.getByText('Mend what is wrong first'), 'word that it is not kept');
        equal((await listed(page, 'Long Acre')).latestVersion, 1, 'version on the server');
        await page.reload();
        await choose(page, 'flyingArea');
        await wantBox(page, 'flyingArea.corners.1.xMeters', '-600', 'the wrong corner after a reload');
        await see(remark, 'the fault after a reload');
        await remark.getByRole('button', { name: 'Go there' }).click();
        equal(
          await page.evaluate(() => document.activeElement?.closest('[data-part]')?.dataset.part ?? ''),
          'flyingArea',
          'where the keyboard is',
        );
        page.once('dialog', (dialog) => void dialog.accept());
        await page.getByRole('button', { name: 'Throw the draft away' }).click();
        await see(page.getByText('Nothing stands out.'), 'a clear field');
      },
    ],
    [
      'a strip that leaves the flying area is remarked, and may be kept after a second look',
      async () => {
        const page = shared.mei;
        await choose(page, 'strips.0');
        await box(page, 'strips.0.end.xMeters').fill('420');
        await see(
          page.locator('[data-remark="strips.0.end"]', { hasText: 'out of the flying area' }),
          'the remark',
        );
        equal(await page.locator('[data-remarks] .notice').count(), 0, 'faults');
        page.once('dialog', (dialog) => void dialog.accept());
        await page.getByRole('button', { name: 'Throw the draft away' }).click();
      },
    ],
    [
      'an area is walked corner by corner, without a connection and over a failing position',
      async () => {
        const page = shared.mei;
        const context = page.context();
        await context.grantPermissions(['geolocation']);
        await page.goto('/fields/new');
        await see(page.locator('[data-plan] svg'), 'the empty plan');
        await page.getByText('Walk with this phone').click();
        await page.locator('select[name=walked]').selectOption('landingAreas');
        const walk = async (latitude, longitude, accuracy) => {
          await context.setGeolocation({ latitude, longitude, accuracy });
          await see(
            page.locator('[data-accuracy]', { hasText: `${String(accuracy)} m` }),
            `accuracy of ${String(accuracy)} m`,
          );
        };
        await context.setGeolocation({ latitude: 54.2147, longitude: -1.3862, accuracy: 4 });
        await page.locator('[data-walk]').getByRole('button', { name: 'Start' }).click();
        const mark = page.getByRole('button', { name: 'Mark this corner' });
        const marked = (n) =>
          see(
            page.getByText(n === 1 ? 'One corner is marked.' : `${String(n)} corners are marked.`),
            `corner ${String(n)}`,
          );
        await walk(54.2147, -1.3862, 4);
        await mark.click();
        await marked(1);
        await context.setOffline(true);
        await context.setGeolocation(null);
        await page.waitForTimeout(300);
        await walk(54.2147, -1.3842, 5);
        await mark.click();
        await marked(2);
        await walk(54.2157, -1.3842, 80);
        await mark.click();
        await see(page.getByText('Too poor to mark'), 'word of the poor position');
        await walk(54.2157, -1.3842, 6);
        await mark.click();
        await marked(3);
        await see(page.locator('[data-kept]', { hasText: 'Kept on this device' }), 'kept corners');
        await context.setOffline(false);
        await page.reload();
        await marked(3);
        await page.getByRole('button', { name: 'Put it into the draft' }).click();
        await choose(page, 'landingAreas.0');
        await wantBox(page, 'landingAreas.0.area.corners.0.xMeters', '0', 'east of the first corner');
        const north = Number(await box(page, 'landingAreas.0.area.corners.2.yMeters').inputValue());
        if (Math.abs(north - 111.3) > 0.2) throw new Error(`third corner ${String(north)} m north`);
        equal(
          await page.locator('[data-entry="survey.method"] select').inputValue(),
          'SURVEY_METHOD_WALKED',
          'how it was surveyed',
        );
        await context.clearPermissions();
      },
    ],
    [
      'a new field is kept, with parts added and removed',
      async () => {
        const page = shared.mei;
        await page.getByRole('button', { name: 'Keep the field' }).click();
        await see(page.getByText('Give the field a name first.'), 'word of the missing name');
        await page.locator('[data-entry="displayName"] input').fill('Low Meadow');
        await page.locator('select[name=kind]').selectOption('strips');
        await page.getByRole('button', { name: 'Add it' }).click();
        await see(page.locator('[data-part="strips.0"]'), 'the new strip');
        await page.locator('select[name=kind]').selectOption('obstacles');
        await page.getByRole('button', { name: 'Add it' }).click();
        await page.getByRole('button', { name: 'Remove obstacle' }).click();
        equal(await page.locator('[data-choose^="obstacles"]').count(), 0, 'obstacles');
        await page.getByRole('button', { name: 'Keep the field' }).click();
        await see(page.getByRole('heading', { name: 'Low Meadow', level: 1 }), 'the kept field');
        equal((await listed(page, 'Low Meadow')).description.strips.length, 1, 'strips on the server');
      },
    ],
    [
      'a kept change is the next version, the one before stays readable, and stale changes are told',
      async () => {
        const page = shared.mei;
        await openForm(page, 'Quarry Top');
        const field = await listed(page, 'Quarry Top');
        await choose(page, 'landingAreas.0');
        await page.locator('[data-entry="landingAreas.0.surface"] select').selectOption('SURFACE_LONG_GRASS');
        const other = await rest(page, 'PATCH', `/v1/${field.name}?updateMask=description`, {
          etag: field.etag,
          description: { ...field.description, keeperNotes: 'Changed meanwhile.' },
        });
        equal(other.status, 200, 'the other change');
        await page.getByRole('button', { name: 'Keep as the next version' }).click();
        await see(page.locator('[data-conflict]'), 'word of the conflict');
        await page.getByRole('button', { name: 'Load the newer version' }).click();
        equal(
          await page.locator('[data-entry="landingAreas.0.surface"] select').inputValue(),
          'SURFACE_LONG_GRASS',
          'what was typed',
        );
        await page.getByRole('button', { name: 'Keep as the next version' }).click();
        await see(page.getByText('version 3'), 'the third version');
        await page.getByRole('button', { name: 'Show version 1' }).click();
        await see(page.getByText('You see version 1, not the latest.'), 'the first version');
        equal(await page.locator('[data-parts]', { hasText: 'long grass' }).count(), 0, 'the new surface');
        await see(page.locator('a', { hasText: 'Redshank' }), 'the approval at this field');
      },
    ],
    [
      'the field leaves as GeoJSON and GPX and comes back from both as the same parts',
      async () => {
        const page = shared.mei;
        const field = await listed(page, 'Long Acre');
        await page.goto(`/fields/${idOf(field)}`);
        const saved = async (name) => {
          const [file] = await Promise.all([
            page.waitForEvent('download'),
            page.getByRole('button', { name }).click(),
          ]);
          return readFileSync(await file.path());
        };
        equal(JSON.parse(await saved('Save as JSON')).displayName, 'Long Acre', 'name in the JSON');
        shared.files = {
          'long_acre.geojson': await saved('Save as GeoJSON'),
          'long_acre.gpx': await saved('Save as GPX'),
        };
        for (const [name, buffer] of Object.entries(shared.files)) {
          const read = await rest(page, 'POST', '/v1/clubs/larkmoor/fields:decodeSurvey', {
            fileName: name,
            content: buffer.toString('base64'),
            datumLatitudeDegrees: field.description.datumLatitudeDegrees,
            datumLongitudeDegrees: field.description.datumLongitudeDegrees,
          });
          equal(read.status, 200, `${name}: ${JSON.stringify(read.body.message ?? '')}`);
          equal(read.body.features.length, partCount(field), `features of ${name}`);
          const barn = read.body.features.find((f) => f.name === 'barn');
          equal(
            `${barn.part} ${barn.obstacleKind} ${String(barn.closed)} ${String(barn.heightMeters)}`,
            'FIELD_PART_OBSTACLE OBSTACLE_KIND_BUILDING true 7.5',
            `the barn of ${name}`,
          );
          const corner = field.description.obstacles[1].points[0];
          const off = Math.min(
            ...barn.points.map((p) => Math.hypot(p.xMeters - corner.xMeters, p.yMeters - corner.yMeters)),
          );
          if (off > 0.02) throw new Error(`${name}: the barn is ${off.toFixed(3)} m away`);
        }
      },
    ],
    [
      'a survey file is read, looked through on the plan, and what is chosen becomes part of the draft',
      async () => {
        const page = shared.mei;
        await page.goto('/fields/new');
        await page.getByText('Read a survey file').click();
        const give = (name, buffer) =>
          page.locator('input[name=survey]').setInputFiles({ name, mimeType: 'application/json', buffer });
        const fault = (text) =>
          see(page.locator('[data-survey-fault]', { hasText: text }), `word of “${text}”`);
        await give('big.csv', Buffer.alloc(524289, 'x'));
        await fault('at most 512 KiB');
        const swapped = JSON.parse(shared.files['long_acre.geojson']);
        swapped.features[3].geometry.coordinates[0] = swapped.features[3].geometry.coordinates[0].map(
          ([a, b]) => [b, a],
        );
        await give('swapped.geojson', Buffer.from(JSON.stringify(swapped)));
        await fault('feature 4');
        await give('long_acre.geojson', shared.files['long_acre.geojson']);
        const parts = partCount(await listed(page, 'Long Acre'));
        await see(page.getByText(`${String(parts)} features were read.`), 'what was read');
        await see(page.locator('[data-plan] .preview'), 'the preview on the plan');
        await page.locator('[data-feature="power line"] select').selectOption('');
        await page.locator('[data-feature="farm track"] select').selectOption('pilotPosition');
        await page.locator('[data-feature="farm track"] select').selectOption('roads');
        await page.getByRole('button', { name: `Put ${String(parts - 1)} parts into the draft` }).click();
        equal(await page.locator('[data-choose]').count(), parts - 1, 'parts of the draft');
        equal(await page.locator('[data-plan] .preview').count(), 0, 'previews left on the plan');
        await choose(page, 'obstacles.1');
        equal(
          await page.locator('[data-entry="obstacles.1.kind"] select').inputValue(),
          'OBSTACLE_KIND_BUILDING',
          'kind of the barn',
        );
        await page.getByRole('button', { name: 'Undo' }).click();
        equal(await page.locator('[data-choose]').count(), 0, 'parts after undo');
      },
    ],
    [
      'the pages of fields fit 360 px, pass the accessibility rules on both grounds, and have room to tap',
      async () => {
        const page = shared.mei;
        await page.setViewportSize({ width: 360, height: 740 });
        const at = `/fields/${idOf(await listed(page, 'Long Acre'))}`;
        for (const path of ['/fields', at, `${at}/change`, '/fields/new']) {
          for (const colorScheme of ['light', 'dark']) {
            await page.emulateMedia({ colorScheme });
            await page.goto(path);
            await see(page.locator('main h1'), `heading of ${path}`);
            if (path.endsWith('/change')) await choose(page, 'obstacles.1');
            equal((await hardToUse(page)).join('; '), '', `${path} on ${colorScheme} ground`);
          }
          await fits(page, path);
        }
        await page.context().close();
      },
    ],
  ];
}

import { readFileSync } from 'node:fs';
import { demo, describe, equal, password, rest, see } from './browser.mjs';

const state = (page, name) => page.locator(`[data-state="APPROVAL_STATE_${name}"]`);
const press = (page, action) => page.locator(`[data-action="${action}"]`).click();
const send = (page) => page.locator('form[data-form] button[type=submit]').click();
const named = 'Redshank, second airframe';

/** Fills the form from a file, names the model and submits; answers the approval's address. */
async function submit(page, file, name, field) {
  await describe(page, file);
  await page.locator('input[name=name]').fill(name);
  await page.locator('select[name=field]').selectOption({ label: field });
  await see(page.locator('[data-finding]'), 'live findings');
  await page.getByRole('button', { name: 'Submit for first-flight approval' }).click();
  await see(state(page, 'SUBMITTED'), 'state submitted');
  return new URL(page.url()).pathname;
}

/** From a member's file to a signature, and everything that must be refused on the way. */
export function approvalTests({ phone, tab }) {
  const shared = {};
  return [
    [
      'the draft of a model survives a reload',
      async () => {
        const page = await phone('Ada Thorne');
        shared.ada = page;
        await describe(page, 'redshank_quarry_top');
        await page.locator('input[name=name]').fill(named);
        await see(page.locator('[data-kept]', { hasText: 'Kept on this device' }), 'kept state');
        await page.reload();
        await see(page.getByText('Your draft from this device was restored.'), 'restored draft');
        equal(await page.locator('input[name=name]').inputValue(), named, 'name after the reload');
      },
    ],
    [
      'findings follow a changed number, and undo takes it back',
      async () => {
        const page = shared.ada;
        const box = page.locator('[data-entry="model.mass.emptyMassKg"] input');
        const before = await box.inputValue();
        const row = page.locator('[data-finding="stall.speed"] .value');
        await see(page.locator('[data-finding]'), 'findings');
        if (!(await row.isVisible())) await page.locator('summary', { hasText: 'hold' }).first().click();
        await see(row, 'stall speed');
        const was = await row.textContent();
        await box.fill('14');
        await page.waitForFunction(
          (old) => document.querySelector('[data-finding="stall.speed"] .value')?.textContent !== old,
          was,
        );
        await page.getByRole('button', { name: 'Undo' }).click();
        equal(await box.inputValue(), before, 'mass after undo');
      },
    ],
    [
      'a member submits a model',
      async () => {
        shared.path = await submit(shared.ada, 'redshank_quarry_top', named, 'Quarry Top');
        await see(shared.ada.locator('[data-finding]'), 'findings of the kept assessment');
        await see(shared.ada.getByText('Bear in mind'), 'cautions');
        equal(await shared.ada.locator('[data-action="sign"]').count(), 0, 'sign buttons of the owner');
      },
    ],
    [
      'the document behind a decision can be saved as the file it was made from',
      async () => {
        const page = shared.ada;
        const waiting = page.waitForEvent('download');
        await page.getByRole('button', { name: 'Save the document as a file' }).click();
        const saved = JSON.parse(readFileSync(await (await waiting).path(), 'utf8'));
        const given = JSON.parse(readFileSync(demo('redshank_quarry_top'), 'utf8'));
        equal(saved.model.displayName, named, 'name in the saved document');
        equal(saved.model.surfaces.length, given.model.surfaces.length, 'surfaces in the saved document');
        equal(saved.field.displayName, 'Quarry Top', 'field in the saved document');
      },
    ],
    [
      'an officer finds it waiting, and cannot return it without a reason',
      async () => {
        const page = await phone('Ines Valdez');
        shared.ines = page;
        await page.locator('a', { hasText: named }).first().click();
        await see(state(page, 'SUBMITTED'), 'state submitted');
        await press(page, 'return');
        await send(page);
        await see(page.getByText('Write a reason first.'), 'asked for a reason');
      },
    ],
    [
      'the officer returns it with a reason that a reload does not lose',
      async () => {
        const page = shared.ines;
        await page
          .locator('textarea[name=reason]')
          .fill('Measure the static thrust and tell the mass again.');
        await send(page);
        await see(state(page, 'RETURNED'), 'state returned');
      },
    ],
    [
      'the member reads the reason, changes the model and sends it again as the next revision',
      async () => {
        const page = shared.ada;
        await page.goto(shared.path);
        await see(page.locator('[data-returned]', { hasText: 'Measure the static thrust' }), 'the reason');
        await page.getByRole('link', { name: 'Change and send again' }).click();
        const thrust = page.locator('[data-entry="model.engines.0.staticThrustNewtons"]');
        await thrust.locator('input').fill('83');
        await thrust.locator('select').selectOption('BASIS_MEASURED');
        await page.locator('textarea[name=note]').fill('Thrust measured on Sunday: 83 N.');
        await page.getByRole('button', { name: 'Keep the new revision and send again' }).click();
        await see(state(page, 'SUBMITTED'), 'state submitted again');
        await see(page.locator('header', { hasText: 'revision 2' }), 'revision 2');
      },
    ],
    [
      'a decision typed on an older version is refused as a conflict and keeps its words',
      async () => {
        const page = shared.ines;
        await page.goto(shared.path);
        await press(page, 'beginReview');
        await send(page);
        await see(state(page, 'DESK_REVIEW'), 'desk review');
        const old = await tab(page);
        await old.goto(shared.path);
        await press(old, 'return');
        await old.locator('textarea[name=reason]').fill('Typed on the older version.');
        await press(page, 'passDesk');
        await page.locator('textarea[name=conditions]').fill('Gusts at most 8 m/s\nHeight at most 90 m');
        await send(page);
        await see(state(page, 'BENCH'), 'bench');
        await send(old);
        await see(old.locator('[data-conflict]'), 'the conflict');
        await old.getByRole('button', { name: 'Load the newer version' }).click();
        await see(state(old, 'BENCH'), 'the newer version');
        const kept = await old.locator('textarea[name=reason]').inputValue();
        equal(kept, 'Typed on the older version.', 'typed words');
        await old.close();
      },
    ],
    [
      'an officer passes the bench gate; a wrong password does not sign, the right one does',
      async () => {
        const page = shared.ines;
        await press(page, 'passBench');
        await send(page);
        await see(state(page, 'READY'), 'ready for the field');
        await press(page, 'sign');
        shared.digest = await page.locator('[data-digest]').textContent();
        await page.locator('input[name=password]').fill('not the password');
        await send(page);
        await see(page.locator('[data-trouble]'), 'refused wrong password');
        await see(state(page, 'READY'), 'still ready');
        await page.locator('input[name=password]').fill(password);
        await send(page);
        await see(state(page, 'SIGNED'), 'signed');
        equal(await page.locator('[data-gate][data-open="true"]').count(), 3, 'open gates');
        await see(
          page.locator('section', { hasText: 'Signatures' }).getByText(shared.digest),
          'signed digest',
        );
      },
    ],
    [
      'nobody signs their own model: the page says so and REST refuses',
      async () => {
        const page = await phone('Ines Valdez');
        const path = await submit(page, 'dabchick_long_acre', 'Dabchick of Ines', 'Long Acre');
        await see(page.locator('[data-own]'), 'word that someone else must sign');
        for (const action of ['beginReview', 'passDesk', 'sign'])
          equal(await page.locator(`[data-action="${action}"]`).count(), 0, `${action} buttons`);
        const at = `/v1/clubs/larkmoor${path}`;
        const own = await rest(page, 'GET', at);
        const { etag, signingDigest } = own.body;
        const begun = await rest(page, 'POST', `${at}:beginReview`, { etag });
        equal(begun.status, 403, 'begin review of an own model');
        const signed = await rest(page, 'POST', `${at}:sign`, {
          etag,
          password,
          signingDigest: signingDigest ?? 'none',
        });
        equal(signed.status, 403, 'sign an own model');
        equal((await rest(page, 'GET', at)).body.state, 'APPROVAL_STATE_SUBMITTED', 'state after both');
        await page.context().close();
      },
    ],
    [
      'a member cannot decide, by page or by REST',
      async () => {
        const page = await phone('Bram Okafor');
        await page.goto('/approvals');
        const mine = await rest(page, 'GET', '/v1/clubs/larkmoor/approvals');
        const { name, etag } = mine.body.approvals[0];
        await page.goto(`/approvals/${name.split('/').pop()}`);
        await see(page.getByText('Where it stands'), 'own approval');
        for (const action of ['passDesk', 'hold', 'return'])
          equal(await page.locator(`[data-action="${action}"]`).count(), 0, `${action} buttons`);
        equal(
          (await rest(page, 'POST', `/v1/${name}:passDesk`, { etag })).status,
          403,
          'pass desk by a member',
        );
        await page.context().close();
      },
    ],
  ];
}

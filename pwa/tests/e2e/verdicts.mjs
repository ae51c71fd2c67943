import { equal, password, rest, see } from './browser.mjs';
import { usable } from './page.mjs';

const state = (page, name) => page.locator(`[data-state="APPROVAL_STATE_${name}"]`);
const packState = (page, name) => page.locator(`[data-pack-state="RULE_PACK_STATE_${name}"]`);
const helper = '[data-asked-rule="larkmoor-club.helper"]';

/** Takes one step of the review. */
async function step(page, action, next) {
  await page.locator(`[data-action="${action}"]`).click();
  if (action === 'sign') await page.locator('input[name=password]').fill(password);
  await page.locator('form[data-form] button[type=submit]').click();
  await see(state(page, next), `state ${next}`);
}

/** Gives an officer's answer to the rule about the helper. */
async function answer(page, word, why) {
  await page.locator(helper).getByRole('button', { name: 'Answer this' }).click();
  await page.getByLabel(word, { exact: true }).check();
  await page.locator('textarea[name=why]').fill(why);
  await page.getByRole('button', { name: 'Keep this answer' }).click();
}

/** Wants the page to say of each gate whether it stands or opens again, e.g. { desk: false, bench: true }. */
async function fates(page, wanted) {
  await see(page.locator('[data-fates]'), 'what became of the gates');
  const told = await page
    .locator('[data-fate]')
    .evaluateAll((all) => all.map((e) => [e.dataset.fate, e.dataset.stands === 'true']));
  equal(JSON.stringify(Object.fromEntries(told)), JSON.stringify(wanted), 'gates that stand');
  for (const [gate, stands] of Object.entries(wanted)) {
    const rail = `[data-gate="${gate}"][data-open="${String(stands)}"]`;
    await see(page.locator(rail), `gate ${gate}, ${stands ? 'open' : 'shut'}`);
  }
}

/** Every signature of the club, with what it is over and whether it lapsed. */
async function signatures(page) {
  const { body } = await rest(page, 'GET', '/v1/clubs/larkmoor/approvals?pageSize=200');
  const found = {};
  for (const { name } of body.approvals) {
    const { body: whole } = await rest(page, 'GET', `/v1/${name}`);
    for (const s of whole.signatures ?? []) {
      const { lapsed = false, ...rests } = s;
      found[`${name} ${JSON.stringify(rests)}`] = lapsed;
    }
  }
  return found;
}

/** Overflow, small controls and what an automatic reader finds hard to use, of the page as it stands. */
/** From an officer's answer to a version of the rules that turns a signed verdict: it is told, and no signature changes unseen. */
export function verdictTests({ phone }) {
  const shared = {};
  return [
    [
      'an officer answers a rule on somebody else’s approval, with the reason in the record',
      async () => {
        const page = await phone('Ines Valdez');
        shared.ines = page;
        const { body } = await rest(page, 'GET', '/v1/clubs/larkmoor/approvals?pageSize=200');
        const own = body.approvals.find((a) => {
          const words = (a.confirmations ?? []).map((c) => c.rule);
          const waits = a.state === 'APPROVAL_STATE_SUBMITTED' && a.ownerDisplayName === 'Ada Thorne';
          return waits && words.includes('larkmoor-club.helper') && words.includes('larkmoor-club.insured');
        });
        if (!own) throw new Error('no submitted approval of Ada Thorne with her words on the club’s rules');
        shared.name = own.name;
        shared.path = `/approvals/${own.name.split('/').pop()}`;
        await page.goto(shared.path);
        await see(page.locator(helper), 'the rule that asks for a word');
        equal(
          await page.getByRole('button', { name: 'Answer this' }).count(),
          0,
          'answers before the review',
        );
        await step(page, 'beginReview', 'DESK_REVIEW');
        await answer(page, 'It is not so', 'Nobody was named as the helper.');
        await see(page.locator(`${helper}[data-verdict="VERDICT_FAILS"]`), 'the finding after a no');
        await see(state(page, 'DESK_REVIEW'), 'that the state stays');
        await answer(page, 'It is so', 'Bram Okafor told me that he helps.');
        await see(page.locator(`${helper}[data-verdict="VERDICT_TIGHT"]`), 'the finding after a yes');
        equal(await page.locator('[data-word="larkmoor-club.helper"]').count(), 2, 'answers in the record');
        await see(page.getByText('Nobody was named as the helper.').first(), 'the reason of the first');
        await usable(page, 'the approval with its answers');
      },
    ],
    [
      'the officers pass and sign what was answered',
      async () => {
        const page = shared.ines;
        await step(page, 'passDesk', 'BENCH');
        await step(page, 'passBench', 'READY');
        await answer(page, 'It is not so', 'Bram Okafor is not here.');
        await see(state(page, 'DESK_REVIEW'), 'that a no opens the desk gate again');
        await fates(page, { desk: false, bench: true });
        await usable(page, 'the gates after a no');
        await answer(page, 'It is so', 'Bram Okafor has come.');
        await see(page.locator(`${helper}[data-verdict="VERDICT_TIGHT"]`), 'the finding after he came');
        await step(page, 'passDesk', 'READY');
        await step(page, 'sign', 'SIGNED');
        equal(await page.locator('[data-fates]').count(), 0, 'words on gates once it is signed');
        shared.signed = await signatures(page);
        equal(
          Object.keys(shared.signed).some((key) => key.startsWith(shared.name)),
          true,
          'a new signature',
        );
      },
    ],
    [
      'the committee drafts a version that wants an officer’s word, and sees whom it turns before anybody publishes',
      async () => {
        const page = await phone('Mei Castellan');
        await page.goto('/rules');
        await page.locator('[data-standing="force"] [data-pack="larkmoor-club"]').click();
        await page.getByRole('button', { name: 'Draft a new version' }).click();
        const row = page.locator('[data-rule-row="insured"]');
        await row.locator('summary').first().click();
        await row.getByLabel('Who confirms it').selectOption({ label: 'a safety officer' });
        await page.getByRole('button', { name: 'Keep the draft' }).click();
        await see(packState(page, 'DRAFT'), 'the kept draft');
        await page.getByRole('button', { name: 'Which approvals would change?' }).click();
        await see(page.locator('[data-preview="done"]'), 'the preview');
        const turned = page.locator('[data-changes] section', {
          has: page.locator(`a[href="${shared.path}"]`),
        });
        await see(turned.locator('[data-change="rule.larkmoor-club.insured"]'), 'the verdict that turns');
        await see(turned.getByText('It lapses, with its signatures.'), 'that it lapses');
        await usable(page, 'the preview');
        equal(
          JSON.stringify(await signatures(shared.ines)),
          JSON.stringify(shared.signed),
          'signatures after the preview',
        );
        await page.getByRole('button', { name: 'Propose this pack' }).click();
        await see(packState(page, 'PROPOSED'), 'the proposal');
        const other = await phone('Tomas Lind');
        await other.goto(new URL(page.url()).pathname);
        await other.getByRole('button', { name: 'Which approvals would change?' }).click();
        await see(other.locator('[data-preview="done"]'), 'the preview of the second person');
        await other.getByRole('button', { name: 'Publish as the second person' }).click();
        await see(packState(other, 'PUBLISHED'), 'the published version');
        await page.context().close();
        await other.context().close();
      },
    ],
    [
      'the officer finds the turned verdict listed, and reads why the approval lapsed',
      async () => {
        const page = shared.ines;
        await page.goto('/');
        const told = page.locator('[data-unread] [data-verdict-changes]', {
          has: page.locator(`a[href="${shared.path}"]`),
        });
        const last = told.filter({ hasText: 'larkmoor-club' }).first();
        await see(last, 'the turned verdict among what is unread');
        await usable(page, 'the list of turned verdicts');
        await last.locator('a').click();
        await see(state(page, 'LAPSED'), 'state lapsed');
        await see(page.locator('blockquote', { hasText: 'rule.larkmoor-club.insured' }), 'the reason');
        await see(page.getByText('go for first flight').first(), 'the signature');
        await fates(page, { desk: false, bench: false, field: false });
        await see(
          page.locator('[data-fate="desk"]', { hasText: 'third-party insurance' }),
          'why the desk gate opens again',
        );
        await usable(page, 'the lapsed approval');
      },
    ],
    [
      'no signature changed in silence: each is as it was given, and only what turned is marked as lapsed',
      async () => {
        const now = await signatures(shared.ines);
        equal(
          JSON.stringify(Object.keys(now).sort()),
          JSON.stringify(Object.keys(shared.signed).sort()),
          'signatures, with signer, time and digest',
        );
        const lapsed = Object.keys(now).filter((key) => now[key] !== shared.signed[key]);
        equal(lapsed.length, 1, 'signatures that lapsed');
        equal(lapsed[0].startsWith(shared.name), true, 'whose verdict turned');
        equal(now[lapsed[0]], true, 'that it lapsed');
        await shared.ines.context().close();
      },
    ],
  ];
}

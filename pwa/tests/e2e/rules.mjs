import { equal, rest, see } from './browser.mjs';
import { usable } from './page.mjs';

const figure = (page, limit) => page.locator(`[data-limit="${limit}"] [data-strictest]`);
const packState = (page, name) => page.locator(`[data-pack-state="RULE_PACK_STATE_${name}"]`);

/** Overflow, small controls and what an automatic reader finds hard to use, of the page as it stands. */
/** From a draft of the committee to the rule among a member's findings. */
export function ruleTests({ phone }) {
  const shared = {};
  return [
    [
      'everybody reads the packs in force, and only the committee may draft one',
      async () => {
        const page = await phone('Ada Thorne');
        await page.getByRole('link', { name: 'Rules' }).click();
        await see(page.locator('[data-standing="force"] [data-pack="eu-open-a3"]'), 'a pack in force');
        equal(await page.getByRole('link', { name: 'Draft a rule pack' }).count(), 0, 'drafts of a member');
        await page.locator('[data-pack="eu-open-a3"]').click();
        await see(page.locator('[data-rule="height"]', { hasText: 'at most 120 m' }), 'the height');
        await see(page.locator('[data-rule="mass"]', { hasText: '? unverified' }), 'an unverified rule');
        equal(await page.getByRole('heading', { name: 'Decide' }).count(), 0, 'decisions of a member');
        shared.ada = page;
      },
    ],
    [
      'the strictest of all packs names its rule and what the others ask, for one model too',
      async () => {
        const page = shared.ada;
        await page.goto('/rules/strictest');
        await see(figure(page, 'maximumHeightMeters').getByText('at most 120 m'), 'strictest height');
        const height = page.locator('[data-limit="maximumHeightMeters"]');
        await see(height.locator('[data-deciding="rule.eu-open-a3.height"]'), 'the deciding rule');
        await height.locator('summary').click();
        const other = height.locator('[data-asked="rule.uk-association.height-heavy"]');
        await see(other.getByText('less strict'), 'what another rule asks');
        await page.locator('select[name=model]').selectOption({ label: 'Dabchick' });
        await see(other.getByText('does not apply'), 'that it does not apply to a light model');
        await see(page.locator('[data-limit="maximumStripUseRatio"]', { hasText: '0.75' }), 'the core’s own');
      },
    ],
    [
      'a committee member drafts a new version, and what is typed survives a reload',
      async () => {
        const page = await phone('Mei Castellan');
        shared.mei = page;
        await page.goto('/rules');
        await page.locator('[data-standing="force"] [data-pack="larkmoor-club"]').click();
        await page.getByRole('button', { name: 'Draft a new version' }).click();
        await page.locator('[data-rule-row="strip-use"] summary').first().click();
        const box = page.locator('[data-entry="rules.0.value"] input');
        await box.fill('0.2');
        await see(page.locator('[data-kept]', { hasText: 'Kept on this device' }), 'kept state');
        await page.reload();
        await see(page.getByText('Your draft from this device was restored.'), 'restored draft');
        await page.locator('[data-rule-row="strip-use"] summary').first().click();
        equal(await box.inputValue(), '0.2', 'figure after the reload');
      },
    ],
    [
      'rows are added, removed and taken back, and faults stand at their box',
      async () => {
        const page = shared.mei;
        const rows = page.locator('[data-rule-row]');
        await page.getByRole('button', { name: 'Add a rule' }).click();
        equal(await rows.count(), 5, 'rows after adding');
        await page.getByRole('button', { name: 'Keep the draft' }).click();
        await see(page.locator('[data-entry="rules.4.requirement"]', { hasText: 'is needed' }), 'a fault');
        await see(page.locator('[data-faults="3"]'), 'the number of faults');
        await page.getByRole('button', { name: 'Remove rule rule-5' }).click();
        equal(await rows.count(), 4, 'rows after removing');
        await page.getByRole('button', { name: 'Undo' }).click();
        equal(await rows.count(), 5, 'rows after undo');
        await page.getByRole('button', { name: 'Redo' }).click();
        await page.locator('[data-entry="rules.0.value"] input').fill('7');
        await page.getByRole('button', { name: 'Keep the draft' }).click();
        await see(page.locator('[data-entry="rules.0.value"] .fault'), 'the server’s word at the box');
        await page.locator('[data-entry="rules.0.value"] input').fill('0.2');
        await usable(page, 'the editor');
      },
    ],
    [
      'a rule is confirmed with name and day, and a changed figure is unread again',
      async () => {
        const page = shared.mei;
        const row = page.locator('[data-rule-row="strip-use"]');
        await row.getByRole('button', { name: 'I have read it in its source' }).click();
        await see(row.getByText('read by Mei Castellan on'), 'who read it');
        await page.locator('[data-entry="rules.0.value"] input').fill('0.3');
        await see(row.getByText('? unverified'), 'that the changed figure is unread');
        await page.locator('[data-entry="rules.0.value"] input').fill('0.2');
        await row.getByRole('button', { name: 'I have read it in its source' }).click();
      },
    ],
    [
      'somebody else’s change is told, and what was typed stays',
      async () => {
        const page = shared.mei;
        const other = await phone('Tomas Lind');
        shared.tomas = other;
        shared.id = new URL(page.url()).pathname.split('/')[2];
        const path = `/v1/clubs/larkmoor/rulePacks/${shared.id}`;
        const { body: pack } = await rest(other, 'GET', path);
        const content = { ...pack.content, title: 'Larkmoor Model Flying Club, rules' };
        const changed = await rest(other, 'PATCH', `${path}?updateMask=content`, { ...pack, content });
        equal(changed.status, 200, 'the other one’s change');
        await page.getByRole('button', { name: 'Keep the draft' }).click();
        await see(page.locator('[data-conflict]'), 'the conflict');
        await page.locator('[data-conflict] button').click();
        equal(await page.locator('[data-entry="rules.0.value"] input').inputValue(), '0.2', 'figure');
        await page.getByRole('button', { name: 'Keep the draft' }).click();
        await see(packState(page, 'DRAFT'), 'the kept draft');
      },
    ],
    [
      'the preview tells which approvals change before anybody gives the word',
      async () => {
        const page = shared.mei;
        equal(await page.getByRole('button', { name: 'Propose this pack' }).isDisabled(), true, 'unseen');
        await page.getByRole('button', { name: 'Which approvals would change?' }).click();
        await see(page.locator('[data-change="rule.larkmoor-club.strip-use"]'), 'the changed verdict');
        await usable(page, 'the preview');
      },
    ],
    [
      'one person proposes, and cannot publish too',
      async () => {
        const page = shared.mei;
        await page.getByRole('button', { name: 'Propose this pack' }).click();
        await see(packState(page, 'PROPOSED'), 'the proposal');
        await page.getByRole('button', { name: 'Which approvals would change?' }).click();
        await see(page.locator('[data-changes]'), 'the preview');
        await page.getByRole('button', { name: 'Publish as the second person' }).click();
        await see(page.locator('[data-refused]'), 'the refusal');
        await see(packState(page, 'PROPOSED'), 'that it is still proposed');
      },
    ],
    [
      'another one publishes it, and the former version is retired',
      async () => {
        const page = shared.tomas;
        await page.goto('/rules');
        await page.locator('[data-standing="waiting"] [data-pack="larkmoor-club"]').click();
        await page.getByRole('button', { name: 'Which approvals would change?' }).click();
        await see(page.locator('[data-changes]'), 'the preview');
        await page.getByRole('button', { name: 'Publish as the second person' }).click();
        await see(packState(page, 'PUBLISHED'), 'the published pack');
        await page.goto('/rules');
        await see(page.locator('[data-standing="retired"] [data-pack="larkmoor-club"]'), 'the former');
        await usable(page, 'the list');
        await page.goto('/rules/strictest');
        await see(figure(page, 'maximumStripUseRatio').getByText('at most 0.2'), 'the new figure');
        await usable(page, 'the strictest of all packs');
      },
    ],
    [
      'a member’s findings show the rule with its citation, and take a confirmation',
      async () => {
        const page = shared.ada;
        const answer = await rest(page, 'GET', '/v1/clubs/larkmoor/approvals?mine=true&pageSize=100');
        const lapsed = answer.body.approvals.find((a) => a.state === 'APPROVAL_STATE_LAPSED');
        if (!lapsed) throw new Error('no approval lapsed with the new version');
        await page.goto(`/approvals/${lapsed.name.split('/').pop()}/change`);
        const rules = page.locator('[data-rules]');
        const strip = rules.locator('[data-finding="rule.larkmoor-club.strip-use"]');
        await see(rules, 'the group of rules');
        await see(strip.locator('[data-citation]', { hasText: 'Larkmoor' }), 'the rule with its citation');
        const box = page.locator('[data-confirm="larkmoor-club.helper"]');
        await box.getByLabel('It is not so').check();
        await see(
          page.locator('[data-finding="rule.larkmoor-club.helper"][data-verdict="fails"]'),
          'the finding after a no',
        );
        await box.getByLabel('It is so').check();
        await usable(page, 'the form with its rules');
        await page.getByRole('button', { name: 'Keep the new revision and send again' }).click();
        await see(page.locator('[data-state="APPROVAL_STATE_SUBMITTED"]'), 'state submitted');
        await see(page.locator('[data-rules]'), 'rules on the approval');
        const { body } = await rest(
          page,
          'GET',
          `/v1/clubs/larkmoor/approvals/${lapsed.name.split('/').pop()}`,
        );
        const word = (body.confirmations ?? []).find((c) => c.rule === 'larkmoor-club.helper');
        equal(word?.by, 'Ada Thorne', 'who confirmed');
        equal(word?.confirmed, true, 'what was confirmed');
      },
    ],
  ];
}

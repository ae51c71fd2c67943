// Drives the demonstration in a phone-sized browser. PITGATE_URL says where it runs; the data should be fresh.
import { approvalTests } from './approvals.mjs';
import { benchTests } from './bench.mjs';
import { startBrowser } from './browser.mjs';
import { compareTests } from './compare.mjs';
import { coreTests } from './core.mjs';
import { fieldTests } from './fields.mjs';
import { flightTests } from './flight.mjs';
import { incidentTests } from './incidents.mjs';
import { pageTests } from './page.mjs';
import { rangeTests } from './ranges.mjs';
import { ruleTests } from './rules.mjs';
import { sheetTests } from './sheet.mjs';
import { spreadTests } from './spread.mjs';
import { verdictTests } from './verdicts.mjs';

const house = await startBrowser();
let passed = 0;
let failed = 0;

const tests = [
  ...sheetTests(house),
  ...benchTests(house),
  ...flightTests(house),
  ...approvalTests(house),
  ...compareTests(house), // before a lesson is adopted that holds the model it submits
  ...incidentTests(house),
  ...fieldTests(house),
  ...rangeTests(house),
  ...ruleTests(house),
  ...verdictTests(house), // goes on with what a member sent again under the new rules
  ...coreTests(house),
  ...spreadTests(house),
  ...pageTests(house),
];

for (const [name, run] of tests) {
  const start = Date.now();
  try {
    await run();
    passed++;
    console.log(`ok   ${name} (${String(Date.now() - start)} ms)`);
  } catch (error) {
    failed++;
    console.log(`FAIL ${name}: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}`);
  }
}
await house.close();
console.log(`${String(passed)} passed, ${String(failed)} failed`);
process.exit(failed === 0 ? 0 : 1);

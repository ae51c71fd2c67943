// Holds that the page's core gives memory back: after 300 changed documents in Node it takes as much as after 100, and has as much in use, but for 5 %,
// as the pieces that it takes memory in do not fall alike. Argument: the file of the core. `node deploy/agreement/memory.mjs FILE 1000` runs as many instead.
import { readFileSync } from 'node:fs';
import { inNode } from './host.mjs';

const [, , wasm, last = '300'] = process.argv;
const page = 65536;
const early = 100;
const demo = new URL('../../testdata/demo/redshank_quarry_top.json', import.meta.url);
const document = JSON.parse(readFileSync(demo, 'utf8'));
const { core, memory, end } = await inNode(wasm);

/** Asks for the values of the document with another mass each time, as typing does. */
function changed(run) {
  document.model.mass.emptyMassKg.value += run % 2 ? 0.01 : -0.01;
  return new Promise((done) => core.values(JSON.stringify(document), (kind, text) => done([kind, text])));
}

const room = 1.05;
let before = 0;
let inUse = 0;
for (let run = 1; run <= Number(last); run++) {
  const [kind, text] = await changed(run);
  if (kind !== 'answer') throw new Error(`run ${run} is ${kind}: ${text}`);
  if (run === early) [before, inUse] = [memory(), core.heap()];
  if ([10, early, Number(last)].includes(run)) console.log(`after ${run} runs the core takes ${memory() / page} pages, ${core.heap()} bytes in use`);
}
if (memory() > room * before || core.heap() > room * inUse) {
  console.error(`the core's memory grows: by ${(memory() - before) / page} pages from run ${early} to ${last}`);
  process.exit(1);
}
end();
process.exit();

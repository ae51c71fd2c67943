// Prints in the form of Go benchmarks how long the page's core takes for the demonstration's documents in Node, then its sizes as one line.
import { readFileSync } from 'node:fs';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { inNode } from '../agreement/host.mjs';

const file = process.argv[2];
const core = await inNode(file);
console.log('pkg: pitgate/pwa/wasm');
/** Asks a question some times and prints how long it takes; the engine compiles anew what is used often, its own figures come after the first. */
async function measure(benchmark, name, first, ask) {
  const text = readFileSync(`testdata/demo/${name}.json`, 'utf8');
  const time = async () => {
    const start = performance.now();
    const [kind] = await ask(text);
    if (kind !== 'answer') throw new Error(`${name}: ${kind}`);
    return performance.now() - start;
  };
  for (let i = 0; i < first; i++) await time();
  for (let i = 0; i < 4; i++) console.log(`Benchmark${benchmark}/${name} 1 ${Math.round((await time()) * 1e6)} ns/op`);
}

for (const name of ['dabchick_long_acre', 'sandmartin_long_acre_wet', 'redshank_quarry_top', 'nightjar_long_acre']) await measure('Assess', name, 6, core.report);
await measure('Mended', 'redshank_quarry_top', 1, core.remedied);
const raw = readFileSync(file);
const br = brotliCompressSync(raw, { params: { [constants.BROTLI_PARAM_LGWIN]: 24 } }).length;
console.log(`core as sent: ${[raw.length, gzipSync(raw, { level: 9 }).length, br].join(' ')}`);
process.exit();

// Prints in the form of Go benchmarks how long the page's core takes for the demonstration's documents in Node, then its sizes as one line.
import { readFileSync } from 'node:fs';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { inNode } from '../agreement/host.mjs';

const file = process.argv[2];
const core = await inNode(file);
console.log('pkg: pitgate/pwa/wasm');
for (const name of ['dabchick_long_acre', 'sandmartin_long_acre_wet', 'redshank_quarry_top', 'nightjar_long_acre']) {
  const text = readFileSync(`testdata/demo/${name}.json`, 'utf8');
  const time = async () => {
    const start = performance.now();
    const [kind] = await core.report(text);
    if (kind !== 'answer') throw new Error(`${name}: ${kind}`);
    return performance.now() - start;
  };
  // The engine compiles anew what is used often; its own figures come after that.
  for (let i = 0; i < 6; i++) await time();
  for (let i = 0; i < 4; i++) console.log(`BenchmarkAssess/${name} 1 ${Math.round((await time()) * 1e6)} ns/op`);
}
const raw = readFileSync(file);
const br = brotliCompressSync(raw, { params: { [constants.BROTLI_PARAM_LGWIN]: 24 } }).length;
console.log(`core as sent: ${[raw.length, gzipSync(raw, { level: 9 }).length, br].join(' ')}`);
process.exit();

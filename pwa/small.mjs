// Writes the Brotli form of every built file whose name changes with its content: the server sends it to those who take it. `node small.mjs --check`
// fails when the core as sent is larger than a phone should fetch.
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { brotliCompressSync, constants } from 'node:zlib';

const folder = new URL('./dist/assets/', import.meta.url);
const kinds = /\.(js|css|svg|wasm)$/;

/** Bytes from which a file is worth compressing; as in the server. */
const least = 1024;

/** The most that the core may take as sent, in bytes, so that it does not grow unseen. */
const mostOfCore = 1_200_000;

function brotli(content) {
  return brotliCompressSync(content, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
      [constants.BROTLI_PARAM_LGWIN]: constants.BROTLI_MAX_WINDOW_BITS,
      [constants.BROTLI_PARAM_SIZE_HINT]: content.length,
    },
  });
}

function write() {
  for (const name of readdirSync(folder).filter((name) => kinds.test(name))) {
    const content = readFileSync(new URL(name, folder));
    if (content.length <= least) continue;
    const small = brotli(content);
    if (small.length < content.length) writeFileSync(new URL(`${name}.br`, folder), small);
  }
}

function check() {
  const cores = readdirSync(folder).filter((name) => name.endsWith('.wasm.br'));
  const size = cores.length === 1 ? statSync(new URL(cores[0], folder)).size : 0;
  console.log(`the page's core takes ${size} bytes as sent, of at most ${mostOfCore}`);
  if (size === 0 || size > mostOfCore) process.exit(1);
}

if (process.argv[2] === '--check') check();
else write();

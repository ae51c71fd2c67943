// Answers documents by the core as WebAssembly: one question a line in, kind and SHA-256 of its answer a line out. Arguments: node or chromium, and the
// file of the core, which has the host script of its toolchain beside it.
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { createServer } from 'node:http';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { pathToFileURL } from 'node:url';

const script = 'wasm_exec.js';

/** When the core's collector runs; as in the page's worker. */
const collector = { GOGC: '400', GOMEMLIMIT: '96MiB' };

/** Asks a core the question of a line: what is asked, samples, seed, finding, document and the one to compare with, with tabs between. */
export function asked(core, line, done) {
  const [what, samples, seed, finding, text, other] = line.split('\t');
  if (what === 'report') core.report(text, undefined, done);
  else if (what === 'values') core.values(text, done);
  else if (what === 'window') core.window(text, done);
  else if (what === 'spread') core.spread(text, Number(samples), Number(seed), undefined, done);
  else if (what === 'remedies') core.remedies(text, finding, Number(samples), Number(seed), undefined, done);
  else core.compare(text, other, undefined, done);
}

/** The core in this process. */
export async function inNode(wasm) {
  await import(pathToFileURL(join(dirname(resolve(wasm)), script)).href);
  const handed = new Promise((take) => {
    globalThis.pitgateCore = take;
  });
  const go = new globalThis.Go();
  go.env = collector;
  const { instance } = await WebAssembly.instantiate(readFileSync(wasm), go.importObject);
  void go.run(instance);
  const core = await handed;
  const report = (text) => new Promise((done) => core.report(text, undefined, (kind, answer) => done([kind, answer])));
  const remedied = (text) => new Promise((done) => core.remedies(text, '', 0, 0, undefined, (kind, answer) => done([kind, answer])));
  return {
    core,
    report,
    remedied,
    /** Bytes of the program's memory, which grows and never shrinks. */
    memory: () => instance.exports.mem.buffer.byteLength,
    digest: async (line) => {
      const [kind, answer] = await new Promise((done) => asked(core, line, (...given) => done(given)));
      return `${kind} ${createHash('sha256').update(answer).digest('hex')}`;
    },
    end: () => undefined,
  };
}

const worker = `
importScripts('/${script}');
const core = new Promise((take) => { self.pitgateCore = take; });
const go = new Go();
go.env = ${JSON.stringify(collector)};
WebAssembly.instantiateStreaming(fetch('/core.wasm'), go.importObject).then(({ instance }) => go.run(instance));
const hex = (bytes) => Array.from(new Uint8Array(bytes), (b) => b.toString(16).padStart(2, '0')).join('');
onmessage = async ({ data }) => {
  asked(await core, data, async (kind, answer) => {
    postMessage(kind + ' ' + hex(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(answer))));
  });
};
${asked}`;

/** The core in a worker of a page in Chromium. */
async function inChromium(wasm) {
  const files = {
    '/': ['text/html', '<!doctype html><title>core</title>'],
    '/worker.js': ['text/javascript', worker],
    [`/${script}`]: ['text/javascript', readFileSync(join(dirname(wasm), script))],
    '/core.wasm': ['application/wasm', readFileSync(wasm)],
  };
  const server = createServer((request, response) => {
    const [type, content] = files[request.url] ?? [];
    if (!type) return response.writeHead(404).end();
    return response.writeHead(200, { 'content-type': type }).end(content);
  });
  await once(server.listen(0, 'localhost'), 'listening');
  const { chromium } = createRequire(resolve('pwa/package.json'))('playwright-core');
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--headless', '--no-sandbox', '--disable-gpu'] });
  const page = await browser.newPage();
  await page.goto(`http://localhost:${server.address().port}/`);
  await page.evaluate(() => {
    window.core = new Worker('/worker.js');
  });
  return {
    digest: (line) =>
      page.evaluate(
        (question) =>
          new Promise((done) => {
            window.core.onmessage = ({ data }) => done(data);
            window.core.postMessage(question);
          }),
        line,
      ),
    end: async () => {
      await browser.close();
      server.close();
    },
  };
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  const [, , name, wasm] = process.argv;
  const host = await { node: inNode, chromium: inChromium }[name](wasm);
  for await (const line of createInterface({ input: process.stdin })) console.log(await host.digest(line));
  await host.end();
  process.exit();
}

// Writes src/gen/shape.json: which fields each part of the document has, read off the OpenAPI document. With --check it says whether what is committed is
// what would be written.
import { readFileSync, writeFileSync } from 'node:fs';

const prefix = 'pitgate.v1.';
const source = new URL('../proto/openapi.json', import.meta.url);
const target = new URL('src/gen/shape.json', import.meta.url);
const { schemas } = JSON.parse(readFileSync(source, 'utf8')).components;

const refOf = (of) => (of.$ref ?? of.allOf?.[0]?.$ref ?? '').split('/').at(-1).replace(prefix, '');

/** Kind of one value: a quantity, a choice, a part with fields of its own, or a plain value. */
function kindOf(of) {
  const ref = refOf(of);
  if (ref === 'Quantity') return { kind: 'quantity' };
  if (ref !== '') return { kind: schemas[prefix + ref].enum ? 'choice' : 'part', of: ref };
  if (of.type === 'boolean') return { kind: 'tick' };
  return { kind: of.type === 'integer' ? 'count' : of.type === 'number' ? 'number' : 'text' };
}

const shape = { parts: {}, choices: {} };
function walk(name) {
  if (shape.parts[name]) return;
  shape.parts[name] = Object.entries(schemas[prefix + name].properties ?? {})
    .filter(([field]) => field !== 'field' || name !== 'AssessmentInput')
    .map(([field, of]) => ({
      field,
      ...kindOf(of.items ?? of),
      ...(of.type === 'array' ? { list: true } : {}),
    }));
  for (const f of shape.parts[name]) {
    if (f.kind === 'choice') shape.choices[f.of] = schemas[prefix + f.of].enum;
    if (f.kind === 'part') walk(f.of);
  }
}
walk('AssessmentInput');

const lines = (of) =>
  Object.entries(of)
    .map(([name, value]) => `  ${JSON.stringify(name)}: ${JSON.stringify(value)}`)
    .join(',\n');
const text = `{\n "parts": {\n${lines(shape.parts)}\n },\n "choices": {\n${lines(shape.choices)}\n }\n}\n`;
if (!process.argv.includes('--check')) writeFileSync(target, text);
else if (readFileSync(target, 'utf8') !== text) {
  console.error('not what npm run shape writes: src/gen/shape.json');
  process.exit(1);
}

// Reads the merged OpenAPI document and writes it with our title and with the refusal body that the gateway really sends, which is not the
// status message that the generator assumes.
import { readFileSync } from 'node:fs';

const document = JSON.parse(readFileSync(0, 'utf8').replaceAll('google.rpc.Status', 'Refusal'));
document.info = {
  title: 'pitgate',
  version: 'v1',
  description: 'First-flight approvals of a model-flying club. The computation supports a decision and does not make it.',
};
const text = (description) => ({ type: 'string', description });
document.components.schemas.Refusal = {
  type: 'object',
  description: 'Why a request was refused.',
  required: ['code', 'reason', 'message', 'fieldViolations', 'requestId'],
  properties: {
    code: text('Status by name, e.g. "INVALID_ARGUMENT".'),
    reason: text('Stable word for programs, e.g. "ETAG_MISMATCH".'),
    message: text('What is wrong and what to do next.'),
    fieldViolations: {
      type: ['array', 'null'],
      description: 'Each bad field.',
      items: {
        type: 'object',
        required: ['field', 'description'],
        properties: { field: text('Path of the field.'), description: text('What is wrong with it.') },
      },
    },
    requestId: text('Finds the request in the log.'),
  },
};
process.stdout.write(JSON.stringify(document, null, 2) + '\n');

// A path and a number arrive; an invented evening of so many lines stands there, and what it says of people leaves.
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { inventEvening } from '../invent-evening.js';

/** Lines that a careless program would fall over: objects that cannot be shown as text, and brackets without end. */
const crashing = [
  '{"__proto__":null,"patient":{"id":{"toString":null},"name":{"toString":1},"sex":[]},"collected":{},"results":[null,[],{"value":{"toString":null}}]}',
  '['.repeat(200_000),
];

export async function writeEvening(path, rows) {
  const people = new Set();
  const stream = createWriteStream(path);
  let at = 0;
  for (const report of inventEvening(rows)) {
    at += 1;
    const careless = crashing[[Math.round(rows / 3), Math.round(rows / 2)].indexOf(at)];
    for (const fact of [report.patient.name, report.patient.birthDate ?? null])
      if (fact !== null) people.add(fact);
    if (!stream.write(`${careless ?? JSON.stringify(report)}\n`)) await once(stream, 'drain');
  }
  stream.end();
  await once(stream, 'finish');
  return people;
}

// Whole HL7 v2 messages as laboratories send them: read to what was put in them, and cut as independent readers cut them.
import { readdirSync, readFileSync } from 'node:fs';
import { Hl7Message } from '@medplum/core';
import { Message as ClientMessage } from 'node-hl7-client';
import { describe, expect, it } from 'vitest';
import { decodeMessage } from '../../src/intake/hl7v2/charset.js';
import { component, messagesOf } from '../../src/intake/hl7v2/segments.js';
import { readInput } from '../../src/intake/index.js';
import { reportsOf, resultsOf, said } from './file.js';
import expected from './hl7/expected.json' with { type: 'json' };

const folder = 'tests/intake/hl7';
const names = readdirSync(folder).filter((name) => name.endsWith('.hl7'));
const bytesOf = (name: string) => readFileSync(`${folder}/${name}`);
const textOf = (name: string) => decodeMessage(name, bytesOf(name)).text;

/** Neither library takes frames or batches: each message is handed over alone. */
function bareMessages(text: string): readonly string[] {
  const lines = text
    .replaceAll('\v', '')
    .replaceAll('\u001C', '')
    .split(/\r\n|\r|\n/);
  const kept = lines.filter((line) => line !== '' && !/^(?:FHS|BHS|BTS|FTS)/.test(line));
  return kept
    .join('\r')
    .split(/(?=MSH)/)
    .map((message) => message.replace(/\r+$/, ''));
}

describe('sample messages', () => {
  it('are thirty or more, each with its expected results', () => {
    expect(names.length).toBeGreaterThanOrEqual(30);
    expect([...names].sort()).toEqual(Object.keys(expected).sort());
  });

  it.each(Object.entries(expected))('%s is read to what was put in', async (name, results) => {
    const intake = await readInput({ name, bytes: bytesOf(name) });
    expect(intake.format).toBe('hl7v2');
    expect(said(intake)).toEqual([]);
    const read = reportsOf(intake).flatMap(({ panel, ...rest }) => resultsOf({ panel, ...rest }));
    const standing = name === 'two-people.hl7' ? read : [...new Set(read)];
    expect(standing).toEqual(results);
  });

  it.each(names)('%s is cut by @medplum/core 4.5.2 into the same fields', (name) => {
    const text = textOf(name);
    const ours = messagesOf(text).map(({ segments }) =>
      segments.map((segment) => [
        segment.name,
        ...segment.fields.slice(segment.name === 'MSH' ? 2 : 1),
      ]),
    );
    const theirs = bareMessages(text).map((message) =>
      Hl7Message.parse(message).segments.map((segment) => [
        segment.name,
        ...segment.fields.slice(1).map((one) => one.toString()),
      ]),
    );
    expect(ours).toEqual(theirs);
  });

  it.each(names)('%s has the names and units that node-hl7-client 3.2.0 decodes', (name) => {
    const text = textOf(name);
    messagesOf(text).forEach((message, i) => {
      const bare = bareMessages(text)[i] ?? '';
      const first = message.segments.find((segment) => segment.name === 'OBX');
      if (first === undefined) throw new Error('expected an OBX');
      const client = new ClientMessage({ text: bare });
      const obx = message.segments.filter((segment) => segment.name === 'OBX').length;
      const path = obx > 1 ? client.get('OBX').get(0) : client.get('OBX');
      for (const [field, part] of [
        [3, 2],
        [5, 1],
        [6, 1],
      ] as const) {
        const theirs = path.get(`${field}.${part}`).toString().split('&')[0] ?? '';
        expect(component(message, first, field, part) ?? '').toBe(theirs);
      }
    });
  });
});

// A file read report by report gives what reading it as a whole gives: every sample, in every form, by every door.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openReports, readColumnMap, readInput } from '../../src/intake/index.js';
import { inMemory } from '../../src/intake/large-file.js';
import type { InputFile } from '../../src/intake/written.js';
import { fileOf, said } from './file.js';

const samples = (folder: string): readonly InputFile[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ name }) => ({ name, bytes: readFileSync(join(folder, name)) }));

async function bothWays(file: InputFile, columns = {}) {
  const whole = await readInput(file, { columns });
  const source = await openReports(inMemory(file), { columns });
  const reads = Array.from({ length: source.count }, (_, index) => source.read(index));
  return {
    whole: whole.reports,
    piecewise: reads.map(({ report }) => report),
    notes: [...source.ignored, ...reads.flatMap(({ ignored }) => ignored)],
    wholeNotes: whole.ignored,
  };
}

const folders = ['examples', 'examples/formats', 'tests/intake/hl7'];
const files = folders
  .flatMap(samples)
  .filter(({ name }) => !/expected|clinic|map\.json/.test(name));

describe('reading report by report', () => {
  it.each(files)('gives the reports of $name', async (file) => {
    const map = file.name === 'own-columns.csv' ? columnMap() : {};
    const { whole, piecewise, notes, wholeNotes } = await bothWays(file, map);
    expect(piecewise).toEqual(whole);
    expect(new Set(notes.map((note) => JSON.stringify(note)))).toEqual(
      new Set(wholeNotes.map((note) => JSON.stringify(note))),
    );
  });

  it('finds the rows of one person wherever they stand, in any encoding and with any line end', async () => {
    const rows = fc.array(
      fc.record({
        id: fc.constantFrom('7', '8', 'Zoë', ''),
        test: fc.constantFrom('Ferritin', 'Hb', 'Fribbin', '"Fer\nritin"'),
        value: fc.constantFrom('9', '"9,5"', '3O', '', '5" pipe'),
        day: fc.constantFrom('2026-11-20', '2026-05-02', '03/04/2026', '25/04/2026'),
      }),
      { maxLength: 12 },
    );
    await fc.assert(
      fc.asyncProperty(
        rows,
        fc.constantFrom('\n', '\r\n', '\r'),
        fc.constantFrom<BufferEncoding>('utf8', 'latin1', 'utf16le'),
        async (all, end, encoding) => {
          const lines = all.map(
            ({ id, test, value, day }) => `${id},F,${day},${test},${value},ug/L`,
          );
          const text = ['id,sex,collected,test,value,unit', ...lines, ''].join(end);
          const mark = encoding === 'utf16le' ? '\uFEFF' : '';
          const { whole, piecewise } = await bothWays({
            name: 'a.csv',
            bytes: Buffer.from(mark + text, encoding),
          });
          expect(piecewise).toEqual(whole);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('puts the FHIR lines of one patient together, and gives a specimen to whoever refers to it', async () => {
    const lines = [
      { resourceType: 'Patient', id: 'a', gender: 'female' },
      { resourceType: 'Patient', id: 'b', gender: 'male' },
      { resourceType: 'Patient', id: 'c', gender: 'male' },
      { resourceType: 'Specimen', id: 'u', type: { text: 'Urine' } },
      ...['a', 'b'].flatMap((id) => [
        observation(`Patient/${id}`, 'Ferritin', 'ug/L', undefined),
        observation(`Patient/${id}`, 'Haemoglobin', 'g/L', undefined),
        observation(`Patient/${id}`, 'Iron', 'umol/L', 'Specimen/u'),
      ]),
    ];
    const text = lines.map((line) => JSON.stringify(line)).join('\n');
    const { whole, piecewise } = await bothWays(fileOf('many.ndjson', text));
    expect(piecewise).toHaveLength(2);
    expect(piecewise).toEqual(whole);
    expect(JSON.stringify(piecewise)).not.toContain('serum-iron');
  });

  it('lets a broken object of a list spoil only itself', async () => {
    const good = readFileSync('examples/heavy-periods.json', 'utf8');
    const source = await openReports(inMemory(fileOf('a.json', `[${good}, {"a": 01}, ${good}]`)));
    const reports = [0, 1, 2].map((index) => source.read(index).report);
    expect(reports.map(({ ok }) => ok)).toEqual([true, false, true]);
    expect(said({ format: 'json', reports, ignored: [] })[0]).toContain(
      'a.json, row 2: cannot read this as JSON',
    );
  });

  it.each([
    ['no end', '[{"a":1},'],
    ['no end of an object', '[{"a":1'],
    ['no comma', '[{"a":1} {"a":2}]'],
    ['a comma too many', '[{"a":1},]'],
    ['something behind it', '[{"a":1}] x'],
    ['a bare value', '[1, {"a":1}]'],
  ])('refuses a list with %s as a whole', async (_, text) => {
    const source = await openReports(inMemory(fileOf('a.json', text)));
    expect([source.count, source.read(0).report.ok]).toEqual([1, false]);
  });
});

function columnMap() {
  const map = readColumnMap(
    fileOf('m.json', readFileSync('examples/formats/own-columns.map.json', 'utf8')),
  );
  return map.ok ? map.value : {};
}

function observation(subject: string, text: string, unit: string, specimen: string | undefined) {
  return {
    resourceType: 'Observation',
    status: 'final',
    subject: { reference: subject },
    ...(specimen === undefined ? {} : { specimen: { reference: specimen } }),
    code: { text },
    effectiveDateTime: '2026-11-20',
    valueQuantity: { value: 20, unit },
  };
}

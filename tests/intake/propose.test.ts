// A proposed column map: what it says, what it leaves open, and that it reads the file it came from.
import { describe, expect, it } from 'vitest';
import { proposeColumns, readColumnMap, readInput } from '../../src/intake/index.js';
import { fileOf, reportsOf, resultsOf } from './file.js';
import { sheet, zip } from './sheet.js';

describe('a proposed column map', () => {
  const text =
    'Pat-Nr;Geschlecht;Entnahmedatum;Ferritin (ug/L);Hb g/dL;Station\n7;w;25.11.2026;12,5;9,8;B\n';
  const proposed = proposeColumns(fileOf('a.csv', text));

  it('names every column and proves dates and decimals from the cells', async () => {
    const read = await proposed;
    expect(read.ok && read.value).toEqual({
      columns: {
        'Pat-Nr': 'id',
        Geschlecht: 'sex',
        Entnahmedatum: 'collected',
        'Ferritin (ug/L)': { analyte: 'ferritin', unit: 'ug/L' },
        'Hb g/dL': { analyte: 'haemoglobin', unit: 'g/dL' },
        Station: 'ignore',
      },
      tests: null,
      dates: 'day-first',
      decimal: ',',
    });
    expect(read.ok && read.notes.map(({ place }) => place.field)).toEqual(['Station']);
  });

  it('survives being written to a file, and reads the table it came from', async () => {
    const read = await proposed;
    const map = readColumnMap(fileOf('map.json', JSON.stringify(read.ok ? read.value : null)));
    if (!map.ok) throw new Error('expected a map');
    const intake = await readInput(fileOf('a.csv', text), { columns: map.value });
    expect(reportsOf(intake).map(resultsOf)).toEqual([
      ['ferritin 12,5 ug/L', 'haemoglobin 9,8 g/dL'],
    ]);
  });

  it('is made from a spreadsheet too', async () => {
    const rows = [
      ['Pat-Nr', 'Geschlecht', 'Ferritin (ug/L)', 'Station'],
      ['7', 'w', 12.5, 'B'],
    ];
    const read = await proposeColumns({ name: 'a.xlsx', bytes: zip(sheet(rows)) });
    expect(read.ok && read.value.columns).toEqual({
      'Pat-Nr': 'id',
      Geschlecht: 'sex',
      'Ferritin (ug/L)': { analyte: 'ferritin', unit: 'ug/L' },
      Station: 'ignore',
    });
    const torn = await proposeColumns({ name: 'a.xlsx', bytes: zip(sheet(rows)).subarray(0, 300) });
    expect(torn.ok).toBe(false);
  });

  it('leaves open what cannot be told', async () => {
    const open = await proposeColumns(
      fileOf('a.csv', 'id,collected,test,value,unit\n7,03/04/2026,QX,9,ug/L\n'),
    );
    expect(open.ok && [open.value.dates, open.value.tests]).toEqual([null, { QX: 'ignore' }]);
    expect(open.ok && open.notes.map(({ code }) => code)).toEqual(['unknown-test', 'day-or-month']);
  });
});

describe('what stands below a header', () => {
  const proposedFor = async (text: string) => {
    const read = await proposeColumns(fileOf('a.csv', text));
    if (!read.ok) throw new Error('expected a map');
    return read;
  };

  it('proposes the day of the sample and the sex, and says that it was by values', async () => {
    const { value, notes } = await proposedFor(
      'id;DOB;Q1;Q2;Ferritin (ug/L)\n7;14.06.1987;17.11.2026;w;9\n8;30.01.1962;18.11.2026;m;64\n',
    );
    expect(value.columns).toMatchObject({ Q1: 'collected', Q2: 'sex' });
    expect(notes.map(({ code }) => code)).toEqual(['by-values', 'by-values']);
  });

  it('proposes no day where a birth date may be meant, and nothing twice', async () => {
    const open = await proposedFor('id;Q1;Ferritin (ug/L)\n7;17.11.2026;9\n');
    expect(open.value.columns).toMatchObject({ Q1: 'ignore' });
    const named = await proposedFor(
      'id;DOB;collected;Q1;Hb g/dL\n7;14.6.1987;17.11.2026;18.11.2026;9\n',
    );
    expect(named.value.columns).toMatchObject({ Q1: 'ignore' });
  });

  it('hints at the units that fit, but leaves the unit open', async () => {
    const { value, notes } = await proposedFor('id;Hb\n7;98\n8;131\n');
    expect(value.columns?.Hb).toEqual({ analyte: 'haemoglobin', unit: null });
    expect(notes[0]?.remedy).toMatch(/g\/L/);
    expect(notes[0]?.remedy).not.toMatch(/g\/dL/);
  });
});

describe('a mapping file', () => {
  it('is told the nearest word for a wrong one', () => {
    const read = readColumnMap(
      fileOf('map.json', '{ "columns": { "F": { "analyte": "feritin" } }, "dats": "iso" }'),
    );
    expect(read.ok ? [] : read.problems.map(({ remedy }) => remedy)).toEqual([
      "Did you mean 'ferritin'?",
      "Did you mean 'dates'?",
    ]);
  });
});

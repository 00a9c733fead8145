// A proposed column map: what it says, what it leaves open, and that it reads the file it came from.
import { describe, expect, it } from 'vitest';
import { proposeColumns, readColumnMap, readInput } from '../../src/intake/index.js';
import { fileOf, reportsOf, resultsOf } from './file.js';

describe('a proposed column map', () => {
  const text =
    'Pat-Nr;Geschlecht;Entnahmedatum;Ferritin (ug/L);Hb g/dL;Station\n7;w;25.11.2026;12,5;9,8;B\n';
  const read = proposeColumns(fileOf('a.csv', text));

  it('names every column and proves dates and decimals from the cells', () => {
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
    const map = readColumnMap(fileOf('map.json', JSON.stringify(read.ok ? read.value : null)));
    if (!map.ok) throw new Error('expected a map');
    const intake = await readInput(fileOf('a.csv', text), { columns: map.value });
    expect(reportsOf(intake).map(resultsOf)).toEqual([
      ['ferritin 12,5 ug/L', 'haemoglobin 9,8 g/dL'],
    ]);
  });

  it('leaves open what cannot be told', () => {
    const open = proposeColumns(
      fileOf('a.csv', 'id,collected,test,value,unit\n7,03/04/2026,QX,9,ug/L\n'),
    );
    expect(open.ok && [open.value.dates, open.value.tests]).toEqual([null, { QX: 'ignore' }]);
    expect(open.ok && open.notes.map(({ code }) => code)).toEqual(['unknown-test', 'day-or-month']);
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

// Tables: both forms, the habits of spreadsheets, and what each fault of a table is told.
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fileOf, onlyReport, problemsIn, reportsOf, resultsOf, said } from './file.js';

const header = 'patient id,sex,collected,test,value,unit';
const long = (...rows: string[]) => [header, ...rows].join('\n');
const ferritin = '7,F,2026-11-20,Ferritin,9,ug/L';

describe('a table with one row a result', () => {
  it('puts the rows of one person and day together', async () => {
    const report = await onlyReport('a.csv', long(ferritin, '7,F,2026-11-20,Hb,101,g/L'));
    expect(report.patient).toMatchObject({ id: '7', sex: 'female' });
    expect(report.panel.collected).toBe('2026-11-20');
    expect(resultsOf(report)).toEqual(['ferritin 9 ug/L', 'haemoglobin 101 g/L']);
  });

  it('makes an older day an earlier panel, whatever the order of the rows', async () => {
    const report = await onlyReport('a.csv', long('7,F,2026-05-02,Ferritin,14,ug/L', ferritin));
    expect(report.panel.collected).toBe('2026-11-20');
    expect(report.previous.map(({ collected }) => collected)).toEqual(['2026-05-02']);
  });

  it('reads low, high, range and flag', async () => {
    const text = `${header},low,high,range,flag\n${ferritin},30,400,,L\n7,F,2026-11-20,CRP,<5,mg/L,,,<5,\n`;
    expect(resultsOf(await onlyReport('a.csv', text))).toEqual([
      'ferritin 9 ug/L 30..400 L',
      'crp <5 mg/L ..5',
    ]);
  });

  it('lets a bad row spoil only its own person', async () => {
    const intake = await readInput(
      fileOf(
        'a.csv',
        long(ferritin, '8,M,2026-11-20,Ferritin,3O,ug/L', '9,F,2026-11-20,Ferritin,40,ug/L'),
      ),
    );
    expect(intake.reports.map(({ ok }) => ok)).toEqual([true, false, true]);
    expect(said(intake)).toEqual([
      'a.csv, row 3, ferritin: cannot read this as a number (found "3O"); expected digits such as 30 or 12.5, with < or > before them if the laboratory wrote it.',
    ]);
  });

  it('takes M below a Spanish header for a man where F stands in the column too', async () => {
    const rows = long('7,M,2026-11-20,Ferritin,9,ug/L', '8,F,2026-11-20,Ferritin,9,ug/L');
    const { reports } = await readInput(fileOf('a.csv', rows.replace('sex', 'sexo')));
    expect(reports.map((report) => report.ok && report.value.patient.sex)).toEqual([
      'male',
      'female',
    ]);
  });

  it.each([
    [
      'an unknown test',
      long('7,F,2026-11-20,Fribbin,9,ug/L'),
      'row 2, test: cannot tell which test this is',
    ],
    ['a test misspelt', long('7,F,2026-11-20,Ferittin,9,ug/L'), "Did you mean 'ferritin'?"],
    [
      'no unit',
      long('7,F,2026-11-20,Ferritin,9,'),
      'row 2, ferritin: cannot use a value without its unit',
    ],
    [
      'a ragged row',
      long(ferritin, '7,F,2026-11-20,Hb,101'),
      'row 3: cannot tell which cell belongs to which column (found "5 cells")',
    ],
    [
      'a decimal comma that cuts a cell',
      long('7,F,2026-11-20,Ferritin,12,5,ug/L'),
      'cannot tell which cell',
    ],
    [
      'a quote left open',
      long('7,F,2026-11-20,"Ferritin,9,ug/L', ferritin),
      'row 2: cannot find the end of a quoted cell',
    ],
    ['a stray quote', long('7,F,2026-11-20,Fer"ritin,9,ug/L'), 'cannot read a quote in the middle'],
    [
      'a column twice',
      `${header},value\n${ferritin},9`,
      'row 1, value: cannot tell which of two columns holds',
    ],
    ['two columns of one meaning', `${header},result\n${ferritin},9`, "'value' and 'result'"],
    ['no id in a row', long(',F,2026-11-20,Ferritin,9,ug/L'), 'cannot tell whose row this is'],
    [
      'a sex in no list',
      long('7,Q,2026-11-20,Ferritin,9,ug/L'),
      'cannot tell the sex from this word (found "Q")',
    ],
    [
      'M beside H, which may be mujer',
      long('7,M,2026-11-20,Ferritin,9,ug/L', '8,H,2026-11-20,Ferritin,9,ug/L'),
      'cannot tell the sex',
    ],
    [
      'M alone below a Spanish header, which may be mujer',
      long('7,M,2026-11-20,Ferritin,9,ug/L').replace('sex', 'sexo'),
      'row 2, sexo: cannot tell the sex',
    ],
    [
      'two sexes for one id',
      long(ferritin, '7,M,2026-11-20,Hb,101,g/L'),
      'cannot tell whose row this is',
    ],
    [
      'day and month left open',
      long('7,F,03/04/2026,Ferritin,9,ug/L'),
      'cannot tell the day from the month',
    ],
    [
      'a column that proves both orders',
      long('7,F,13/04/2026,Ferritin,9,ug/L', '8,F,04/13/2026,Ferritin,9,ug/L'),
      'cannot tell the day from the month',
    ],
    ['a day that is none', long('7,F,2026-02-30,Ferritin,9,ug/L'), 'cannot read this as a date'],
    [
      'a thousand in one country',
      long('7,F,2026-11-20,Ferritin,"1,234",ug/L'),
      'cannot tell 1.234 from 1234',
    ],
    [
      'names that are no ids',
      'name,collected,test,value,unit\nA,2026-11-20,Ferritin,9,ug/L\nB,2026-11-20,Ferritin,9,ug/L',
      'cannot keep people apart by name alone',
    ],
    ['no rows', header, 'cannot find rows below the header'],
    ['no columns', 'hello', 'cannot find columns'],
    ['no results', 'patient id,sex\n7,F', 'cannot find results in these columns'],
    [
      'a unit of another test',
      long('7,F,2026-11-20,Transferrin,35,%'),
      'the name says transferrin, but the unit measures percent',
    ],
  ])('tells what is wrong with %s', async (_, text, expected) => {
    expect((await problemsIn('a.csv', text)).join('\n')).toContain(expected);
  });

  it('reads day first only when a column proves it', async () => {
    const text = long('7,F,03/04/2026,Ferritin,9,ug/L', '8,F,25/04/2026,Ferritin,9,ug/L');
    const reports = reportsOf(await readInput(fileOf('a.csv', text)));
    expect(reports.map(({ panel }) => panel.collected)).toEqual(['2026-04-03', '2026-04-25']);
  });

  it('passes over tests it does not explain, with a note', async () => {
    const intake = await readInput(
      fileOf(
        'a.csv',
        long(ferritin, '7,F,2026-11-20,Sodium,140,mmol/L', '7,F,2026-11-20,HbA1c,38,mmol/mol'),
      ),
    );
    expect(resultsOf(reportsOf(intake)[0] ?? expect.fail())).toEqual(['ferritin 9 ug/L']);
    expect(intake.ignored.map(({ cannot }) => cannot)).toEqual([
      'passed over: a test this program does not explain',
      'passed over: glycated haemoglobin, a sugar test',
    ]);
  });

  it('passes over a test without a value', async () => {
    const intake = await readInput(
      fileOf('a.csv', long(ferritin, '7,F,2026-11-20,CRP,pending,mg/L')),
    );
    expect(intake.ignored).toHaveLength(1);
    expect(said(intake)).toEqual([]);
  });

  it('never shows a birth date or a name it cannot use', async () => {
    const text =
      'id,name,birth date,collected,test,value,unit\n7,Zerlina,Quist,2026-11-20,Ferritin,9,ug/L\n7,Quentin,,2026-11-20,Hb,90,g/L';
    expect((await problemsIn('a.csv', text)).join()).not.toMatch(/Zerlina|Quist|Quentin/);
  });
});

describe('a table with one row a person', () => {
  it.each([
    ['comma', 'id,sex,collected,Ferritin (ug/L),Hb g/dL\n7,F,2026-11-20,12.5,9.8\n'],
    [
      'semicolon and decimal comma',
      'id;sex;collected;Ferritin [ug/L];Hb (g/dL)\n7;F;2026-11-20;12,5;9,8\n',
    ],
    ['tab', 'id\tsex\tcollected\tFerritin, ug/L\tHb_g/dL\n7\tF\t2026-11-20\t12.5\t9.8\n'],
    ['bar', 'id|sex|collected|Ferritin ug/L|Hb (g/dL)\n7|F|2026-11-20|12.5|9.8\n'],
    [
      'sep= line',
      'sep=;\r\nid;sex;collected;Ferritin (ug/L);Hb (g/dL)\r\n7;F;2026-11-20;12.5;9.8\r\n',
    ],
    ['CR only', 'id,sex,collected,Ferritin (ug/L),Hb (g/dL)\r7,F,2026-11-20,12.5,9.8\r'],
    ['BOM', '\uFEFFid,sex,collected,Ferritin (ug/L),Hb (g/dL)\n7,F,2026-11-20,12.5,9.8\n'],
    [
      'unit columns',
      'id,sex,collected,ferritin,ferritin_unit,hb,hb_unit\n7,F,2026-11-20,12.5,ug/L,9.8,g/dL\n',
    ],
    [
      'quoted cells over two lines',
      '"id","sex","collected","Ferritin (ug/L)","Hb (g/dL)","address"\n"7","F","2026-11-20","12.5","9.8","1 Low Rd\nSaltmarsh"\n',
    ],
  ])('reads it with %s', async (_, text) => {
    const report = await onlyReport('a.csv', text);
    expect(resultsOf(report).map((line) => line.replaceAll(',', '.'))).toEqual([
      'ferritin 12.5 ug/L',
      'haemoglobin 9.8 g/dL',
    ]);
  });

  it('takes an empty cell for a test not made', async () => {
    const text = 'id,collected,Ferritin (ug/L),CRP (mg/L)\n7,2026-11-20,9,\n8,2026-11-20,,3\n';
    const reports = reportsOf(await readInput(fileOf('a.csv', text)));
    expect(reports.map(resultsOf)).toEqual([['ferritin 9 ug/L'], ['crp 3 mg/L']]);
  });

  it('reads an interval and a flag beside the test', async () => {
    const text =
      'id,collected,Ferritin (ug/L),Ferritin low,Ferritin high,Ferritin flag\n7,2026-11-20,9,30,400,L\n';
    expect(resultsOf(await onlyReport('a.csv', text))).toEqual(['ferritin 9 ug/L 30..400 L']);
  });

  it.each([
    [
      'a column without unit',
      'id,collected,Ferritin\n7,2026-11-20,9',
      'row 1, Ferritin: cannot tell the unit of this column',
    ],
    [
      'a test twice',
      'id,collected,Ferritin (ug/L),Ferritine (ng/mL)\n7,2026-11-20,9,9',
      'which of two columns',
    ],
    [
      'a dot for thousands among decimal commas',
      'id;collected;Ferritin (ug/L)\n7;2026-11-20;12,5\n8;2026-11-20;1.234',
      'cannot tell 1.234 from 1234',
    ],
  ])('tells what is wrong with %s', async (_, text, expected) => {
    expect((await problemsIn('a.csv', text)).join('\n')).toContain(expected);
  });

  it('says which columns it passed over', async () => {
    const text = 'id,collected,Ferritin (ug/L),Ward,HbA1c (mmol/mol)\n7,2026-11-20,9,B,40\n';
    const { ignored } = await readInput(fileOf('a.csv', text));
    expect(ignored.map(({ place }) => place.field)).toEqual(['Ward', 'HbA1c (mmol/mol)']);
  });

  it('keeps a column named __proto__ harmless', async () => {
    const text = 'id,collected,Ferritin (ug/L),__proto__\n7,2026-11-20,9,x\n';
    expect(resultsOf(await onlyReport('a.csv', text))).toEqual(['ferritin 9 ug/L']);
  });
});

describe('the encoding of a table', () => {
  const text = 'id,name,collected,Ferritin (µg/L)\n7,Zoë,2026-11-20,9\n';
  const latin = Uint8Array.from(text, (sign) => sign.charCodeAt(0));
  const utf16 = (first: number[], littleEndian: boolean) => {
    const bytes = new Uint8Array(2 + text.length * 2);
    bytes.set(first);
    const view = new DataView(bytes.buffer);
    [...text].forEach((sign, i) => {
      view.setUint16(2 + i * 2, sign.charCodeAt(0), littleEndian);
    });
    return bytes;
  };
  it.each([
    ['UTF-8', new TextEncoder().encode(text), 0],
    ['windows-1252, with a note', latin, 1],
    ['UTF-16, small end first', utf16([0xff, 0xfe], true), 0],
    ['UTF-16, big end first', utf16([0xfe, 0xff], false), 0],
  ])('may be %s', async (_, bytes, notes) => {
    const intake = await readInput({ name: 'a.csv', bytes });
    expect(reportsOf(intake)[0]?.patient.name).toBe('Zoë');
    expect(reportsOf(intake).map(resultsOf)).toEqual([['ferritin 9 µg/L']]);
    expect(intake.ignored).toHaveLength(notes);
  });
});

describe('a column map', () => {
  it('says what columns, tests and dates mean', async () => {
    const columns = {
      columns: {
        Nr: 'id',
        Wann: 'collected',
        Was: 'test',
        Zahl: 'value',
        Mass: 'unit',
        Rest: 'ignore',
      },
      tests: { F1: 'ferritin', X9: 'ignore' },
      dates: 'day-first',
    } as const;
    const text = 'Nr,Wann,Was,Zahl,Mass,Rest\n7,03/04/2026,F1,9,ug/L,x\n7,03/04/2026,X9,1,g/L,y\n';
    const intake = await readInput(fileOf('a.csv', text), { columns });
    expect(said(intake)).toEqual([]);
    expect(
      reportsOf(intake).map((report) => [report.panel.collected, ...resultsOf(report)]),
    ).toEqual([['2026-04-03', 'ferritin 9 ug/L']]);
  });

  it('gives a column its test and unit', async () => {
    const columns = { columns: { FER: { analyte: 'ferritin', unit: 'ng/mL' } } } as const;
    const intake = await readInput(fileOf('a.csv', 'id,collected,FER\n7,2026-11-20,9\n'), {
      columns,
    });
    expect(reportsOf(intake).map(resultsOf)).toEqual([['ferritin 9 ng/mL']]);
  });
});

describe('a row of a million commas', () => {
  it.each([
    ['as the header', `${','.repeat(1_000_000)}\n1,2\n`],
    ['below the header', `${header}\n${','.repeat(1_000_000)}\n`],
  ])('is one problem %s', async (_, text) => {
    const intake = await readInput(fileOf('a.csv', text));
    expect(said(intake)).toHaveLength(1);
    expect(said(intake)[0]).toContain('cannot read a row this long');
  });
});

// Pasted text: lines, tables with several days, facts of the person, and what is passed over or asked.
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fileOf, onlyReport, problemsIn, reportsOf, resultsOf } from './file.js';

const one = async (text: string) => resultsOf(await onlyReport('pasted text', text));

describe('a pasted line', () => {
  // Layouts seen on laboratory sheets, common practice, no source.
  it.each([
    ['Ferritin   9 ug/L  (30 - 400)  L', 'ferritin 9 ug/L 30..400 L'],
    ['Ferritin 9 ug/L 30-400 L', 'ferritin 9 ug/L 30..400 L'],
    ['Ferritin: 9 µg/L [30 – 400]', 'ferritin 9 µg/L 30..400'],
    ['Ferritin\t9\tug/L\t30 - 400\tL', 'ferritin 9 ug/L 30..400 L'],
    ['Ferritin | 9 | ug/L | 30 - 400 | L', 'ferritin 9 ug/L 30..400 L'],
    ['Ferritin (ug/L)  9  30-400', 'ferritin 9 ug/L 30..400'],
    ['S-Ferritin  9* ug/L', 'ferritin 9 ug/L  *'],
    ['Ferritin L 9 ug/L', 'ferritin 9 ug/L  L'],
    ['Serum ferritin < 5 ng/mL', 'ferritin <5 ng/mL'],
    ['Ferritin 1500 ug/L H Ref: 30 - 400', 'ferritin 1500 ug/L 30..400 H'],
    ['Haemoglobin (Hb) 101 g/L (115 - 165)', 'haemoglobin 101 g/L 115..165'],
    ['Hb 9.8g/dL', 'haemoglobin 9.8 g/dL'],
    ['Hb 9,8 g/dl (12,0 - 16,0)', 'haemoglobin 9,8 g/dl 12,0..16,0'],
    ['Transferrin saturation 8 % (16 - 50)', 'transferrin-saturation 8 % 16..50'],
    ['TSAT 8%', 'transferrin-saturation 8 %'],
    ['C-reactive protein 3 mg/L (<5)', 'crp 3 mg/L ..5'],
    ['Ferritina sérica 9 ng/mL', 'ferritin 9 ng/mL'],
    ['RBC 4.1 10^12/L (3.8 - 5.8)', 'rbc 4.1 10^12/L 3.8..5.8'],
    ['Ferritin 9', 'ferritin 9 -'],
  ])('%s', async (line, expected) => {
    expect(await one(line)).toEqual([expected]);
  });

  it.each([
    ['a look-alike', 'HbA1c 38 mmol/mol', 'glycated'],
    ['another test', 'Sodium 140 mmol/L', 'does not explain'],
    ['a title', 'IRON STUDIES', 'cannot find a test'],
    ['a test without value', 'CRP  pending', 'cannot find a value of crp'],
    ['a sentence', 'Please repeat in 3 months', 'no name of a test'],
    ['words behind a result', 'MCV 74 fL small cells', 'words behind'],
  ])('passes over %s and says why', async (_, line, expected) => {
    const intake = await readInput(fileOf('x', `Ferritin 9 ug/L\n${line}`));
    expect(reportsOf(intake)[0]?.panel.results[0]?.value).toBe('9');
    expect(intake.ignored.map(({ place, cannot }) => `${place.row} ${cannot}`).join()).toMatch(
      new RegExp(`2 .*${expected}`),
    );
  });

  it.each([
    ['two numbers', 'Ferritin 9 12 ug/L', 'what the other numbers of this line are'],
    ['a unit of another test', 'Transferrin 35 %', 'the name says transferrin'],
    ['a name misspelt', 'Feritinn 9 ug/L', "Did you mean 'ferritin'?"],
    ['a thousand in one country', 'Ferritin 1,234 ug/L', 'cannot tell 1.234 from 1234'],
    [
      'a dot for thousands among decimal commas',
      'Hb 9,8 g/dL\nFerritin 1.234 ug/L',
      'cannot tell 1.234 from 1234',
    ],
    ['two people', 'Sex: F\nFerritin 9 ug/L\nSex: M', 'cannot tell whose results these are'],
    [
      'a day that may be a month',
      'Collected: 03/04/2026\nFerritin 9 ug/L',
      'tell the day from the month',
    ],
    ['nothing of ours', 'Dear colleague,', 'cannot find an iron result'],
  ])('asks about %s', async (_, text, expected) => {
    expect((await problemsIn('x', text)).join('\n')).toContain(expected);
  });

  it('does not take a date for a value', async () => {
    expect(await one('Iron studies 20/11/2026\nFerritin 9 ug/L')).toEqual(['ferritin 9 ug/L']);
  });
});

describe('a pasted sheet', () => {
  it('says who and when', async () => {
    const report = await onlyReport(
      'x',
      'Name: Tamsin Quill   DOB: 09/03/1984\nSex: F\nCollected: 20/11/2026 08:40\nFerritin 9 ug/L',
    );
    expect(report.patient).toMatchObject({
      name: 'Tamsin Quill',
      birthDate: '1984-03-09',
      sex: 'female',
    });
    expect(report.panel.collected).toBe('2026-11-20');
    expect(report.context.sampleTime).toBe('08:40');
  });

  it('asks about M behind a Spanish word, which may be mujer', async () => {
    const { reports } = await readInput(fileOf('a.txt', 'Sexo: M\nFerritina 9 ug/L\n'));
    expect(reports.flatMap((report) => (report.ok ? [] : report.problems))).toContainEqual(
      expect.objectContaining({ cannot: 'cannot tell the sex from this word' }),
    );
  });

  it('leaves sex and day open when it does not say them', async () => {
    const report = await onlyReport('x', 'Ferritin 9 ug/L');
    expect([report.patient.sex, report.panel.collected]).toEqual([null, null]);
  });

  // One blank between facts, as a copied page often has it: common practice, no source.
  it.each([
    ['Sex: F Collected: 20/11/2026', { sex: 'female' }, '2026-11-20'],
    ['ID: SB-7 Sex: F DOB: 1984-03-09', { id: 'SB-7', birthDate: '1984-03-09' }, null],
    ['Age: 42 years Sex: F', { ageYears: 42, sex: 'female' }, null],
    ['Fasting: yes Date collected: 20/11/2026 08:40', {}, '2026-11-20'],
    ['Name: Tamsin Quill\tSex: F Collected: 20/11/2026', { name: 'Tamsin Quill' }, '2026-11-20'],
  ])('parts the facts of %s', async (line, patient, collected) => {
    const report = await onlyReport('x', `${line}\nFerritin 9 ug/L`);
    expect(report.patient).toMatchObject(patient);
    expect(report.panel.collected).toBe(collected);
  });

  it.each([
    'Sex: F Ferritin: 9 ug/L (30 - 400)',
    'Ferritin   9 ug/L (30 - 400)   Sex: F',
    'Sex: F; Ferritin 9 ug/L (30 - 400)',
    'Collected: 20/11/2026   Sex: F   Ferritin   9 ug/L   30 - 400',
  ])('reads the result that stands beside facts: %s', async (line) => {
    const report = await onlyReport('x', line);
    expect(resultsOf(report)).toEqual(['ferritin 9 ug/L 30..400']);
    expect(report.patient.sex).toBe('female');
  });

  it.each([
    'Name: Tamsin Quill DOB: 09/03/1984',
    'ID: SB-7 Ward: 4 Sex: F',
    'Sex: F Mother name: Ida Quill',
    'Collected: 20/11/2026 Mother DOB: 01/02/1950',
  ])('asks where a fact ends rather than misread %s', async (line) => {
    const [only = '', ...more] = await problemsIn('x', `${line}\nFerritin 9 ug/L`);
    expect(more).toEqual([]);
    expect(only).toMatch(/cannot tell where this ends; expected each fact on a line of its own/);
    expect(only).not.toMatch(/Quill/);
  });

  it.each([
    [
      'tabs',
      'Test\t2026-11-20\t2026-05-02\tUnits\tReference range\nFerritin\t9 L\t14\tug/L\t30 - 400\nHb\t101\t\tg/L\t115 - 165',
    ],
    [
      'gaps',
      'Test       20/11/2026   02/05/2026   Units   Range\nFerritin   9 L          14           ug/L    30 - 400\nHb         101          -            g/L     115 - 165',
    ],
    [
      'sections',
      'Collected: 20/11/2026\nFerritin 9 ug/L 30-400 L\nHb 101 g/L 115-165\nCollected: 02/05/2026\nFerritin 14 ug/L 30-400',
    ],
  ])('reads several days: %s', async (_, text) => {
    const report = await onlyReport('x', text);
    expect(report.panel.collected).toBe('2026-11-20');
    expect(resultsOf(report)).toEqual([
      'ferritin 9 ug/L 30..400 L',
      'haemoglobin 101 g/L 115..165',
    ]);
    expect(
      report.previous.map(({ collected, results }) => [
        collected,
        results.map(({ value }) => value),
      ]),
    ).toEqual([['2026-05-02', ['14']]]);
  });

  it.each([
    ['Ferritin 9 ug/L (30 - 400) L preliminary', ['ferritin preliminary']],
    ['Ferritin 9 ug/L (30 - 400) L corrected result', ['ferritin corrected']],
    ['Ferritin 9 ug/L (30 - 400) L cancelled by the laboratory', []],
    ['Ferritin 9 ug/L withdrawn', []],
    ['Test\tResult\tUnit\tStatus\nFerritin\t9\tug/L\tcancelled', ['ferritin cancelled']],
    ['Test\tSpecimen\tResult\tUnit\nIron\tUrine\t9\tumol/L', []],
  ])('hears what %s says of its result', async (line, expected) => {
    const { panel } = await onlyReport('p', `Sex: F\nHb 101 g/L\n${line}`);
    const others = panel.results.filter(({ analyte }) => analyte !== 'haemoglobin');
    expect(others.map(({ analyte, status }) => `${analyte} ${status}`)).toEqual(expected);
  });

  it.each(['Pregnant: 20 weeks', 'Gestation 20 weeks', '20 weeks pregnant', 'Pregnancy weeks: 20'])(
    'hears of a pregnancy: %s',
    async (line) => {
      const report = await onlyReport('p', `Sex: F\n${line}\nFerritin 9 ug/L`);
      expect(report.patient.pregnancy).toEqual({ weeks: 20, trimester: null });
    },
  );

  it('leaves open how far a pregnancy is, and hears of none', async () => {
    const open = await onlyReport('p', 'Pregnant: yes\nFerritin 9 ug/L');
    expect(open.patient.pregnancy).toEqual({ weeks: null, trimester: null });
    const told = await onlyReport('p', 'Pregnant: yes\nPregnancy weeks: 20\nFerritin 9 ug/L');
    expect(told.patient.pregnancy).toEqual({ weeks: 20, trimester: null });
    expect(await problemsIn('p', 'Pregnant: perhaps\nFerritin 9 ug/L')).toEqual([
      expect.stringContaining('cannot read the weeks of the pregnancy'),
    ]);
    const none = await onlyReport('p', 'Pregnant: no\nFerritin 9 ug/L');
    expect(none.patient.pregnancy).toBeNull();
  });

  it('refuses a row that does not fit the columns above', async () => {
    const text = 'Test\t2026-11-20\t2026-05-02\tUnits\nFerritin\t9\tug/L';
    expect((await problemsIn('x', text)).join()).toContain('cannot tell which cell');
  });

  it('refuses columns of dates that leave day and month open', async () => {
    const text = 'Test\t03/04/2026\t05/04/2026\tUnits\nFerritin\t9\t12\tug/L';
    expect((await problemsIn('x', text)).join()).toContain('cannot tell the day from the month');
  });
});

describe('what the operator says of the person', () => {
  const patient = { sex: 'female', ageYears: 42 };

  it('fills what the text leaves open', async () => {
    const [report] = reportsOf(await readInput(fileOf('x', 'Ferritin 9 ug/L'), { patient }));
    expect(report?.patient).toMatchObject(patient);
  });

  it('is asked about when the text says otherwise', async () => {
    const intake = await readInput(fileOf('x', 'Sex: M\nFerritin 9 ug/L'), { patient });
    expect(intake.reports.map(({ ok }) => ok)).toEqual([false]);
  });

  it('does not fit a file of several people', async () => {
    const text = 'id,collected,Ferritin (ug/L)\n7,2026-11-20,9\n8,2026-11-20,9\n';
    const intake = await readInput(fileOf('a.csv', text), { patient });
    expect(intake.reports.map(({ ok }) => ok)).toEqual([false]);
  });
});

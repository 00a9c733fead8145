// Report files of our own shape: what is read, and what each wrong field is told.
import { describe, expect, it } from 'vitest';
import { readInput, reportFileSchema } from '../../src/intake/index.js';
import { fileOf, onlyReport, problemsIn, reportsOf, resultsOf } from './file.js';

const result = '{ "analyte": "ferritin", "value": 9, "unit": "ug/L" }';
const file = (patient = '{ "sex": "female" }', results = `[${result}]`, more = '') =>
  `{ "patient": ${patient}, "collected": "2026-11-20", "results": ${results}${more} }`;
const one = (text: string) => file(undefined, `[${text}]`);

describe('a report file', () => {
  it('needs a sex, a day and one result, and fills nothing else in', async () => {
    const report = await onlyReport('a.json', file());
    expect(report.patient).toMatchObject({
      sex: 'female',
      id: null,
      birthDate: null,
      ageYears: null,
    });
    expect(report.panel.results[0]).toMatchObject({
      comparator: null,
      interval: null,
      labFlag: null,
    });
  });

  it('keeps the digits as they were typed', async () => {
    const report = await onlyReport(
      'a.json',
      one('{ "analyte": "haemoglobin", "value": 12.50, "unit": "g/dL" }'),
    );
    expect(report.panel.results[0]?.value).toBe('12.50');
  });

  it.each([
    ['"<5"', '<5'],
    ['">= 1500"', '>=1500'],
    ['"≤5"', '<=5'],
    ['"12,5"', '12,5'],
    ['"0,123"', '0,123'],
  ])('reads the value %s as %s', async (value, expected) => {
    const report = await onlyReport(
      'a.json',
      one(`{ "analyte": "ferritin", "value": ${value}, "unit": "ug/L" }`),
    );
    expect(resultsOf(report)).toEqual([`ferritin ${expected} ug/L`]);
  });

  it.each([
    ['"1,234"', 'cannot tell 1.234 from 1234'],
    ['"1 234"', 'cannot read a number with thousands separators'],
    ['null', 'results[0].value'],
    ['true', 'results[0].value'],
  ])('refuses the value %s', async (value, expected) => {
    const said = await problemsIn(
      'a.json',
      one(`{ "analyte": "ferritin", "value": ${value}, "unit": "ug/L" }`),
    );
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(expected);
  });

  it.each([
    ['"3O"', '3O'],
    ['1e3', '1e3'],
    ['"NaN"', 'NaN'],
    ['""', ''],
  ])('hands on %s as written, for the report room to refuse', async (value, written) => {
    const read = await onlyReport(
      'a.json',
      one(`{ "analyte": "ferritin", "value": ${value}, "unit": "ug/L" }`),
    );
    expect(read.panel.results[0]?.value).toBe(written);
  });

  it.each([
    ['an unknown test', one('{ "analyte": "feritin", "value": 9 }'), "Did you mean 'ferritin'?"],
    [
      'an unknown field',
      one('{ "analyte": "ferritin", "value": 9, "units": "ug/L" }'),
      "Did you mean 'unit'?",
    ],
    ['no sex', file('{ "id": "7" }'), 'patient.sex: cannot do without this field'],
    ['another sex', file('{ "sex": "f" }'), 'one of female, male, unknown'],
    ['no results', file(undefined, '[]'), 'at least one entry'],
    [
      'both weeks and trimester',
      file('{ "sex": "female", "pregnancy": { "weeks": 20, "trimester": 2 } }'),
      'patient.pregnancy',
    ],
    [
      'a trimester of 4',
      file('{ "sex": "female", "pregnancy": { "trimester": 4 } }'),
      'patient.pregnancy.trimester',
    ],
    [
      'a day that is none',
      file().replace('2026-11-20', '2026-02-30'),
      'collected: cannot read this as a date',
    ],
    [
      'a symptom misspelt',
      file(undefined, undefined, ', "context": { "symptoms": ["tirednes"] }'),
      "Did you mean 'tiredness'?",
    ],
    [
      'a bleeding misspelt',
      file(undefined, undefined, ', "context": { "bleeding": "heavy-period" }'),
      "Did you mean 'heavy-periods'?",
    ],
    [
      'a comparator twice',
      one('{ "analyte": "ferritin", "value": "<5", "comparator": ">" }'),
      'which comparator holds',
    ],
    [
      'an earlier result',
      file(undefined, undefined, ', "previous": [{ "collected": "x", "results": [] }]'),
      'previous[0].results',
    ],
    [
      'a field twice',
      '{ "patient": {"sex":"female","sex":"male"} }',
      'patient.sex: cannot tell which of two fields',
    ],
    ['broken text', '{ "patient": ', 'cannot read this as JSON'],
    ['an empty list', '[]', 'cannot find a report'],
    ['a bare number', '[7]', 'an object in braces'],
  ])('tells what is wrong with %s', async (_, text, expected) => {
    expect((await problemsIn('a.json', text)).join('\n')).toContain(expected);
  });

  it('collects every problem of a file', async () => {
    const said = await problemsIn(
      'a.json',
      file('{ "sex": "f" }', '[{ "analyte": "x", "value": null }]'),
    );
    expect(said).toHaveLength(3);
  });

  it('never shows what stands in a name or a birth date', async () => {
    const said = await problemsIn(
      'a.json',
      file('{ "sex": "f", "name": 12, "birthDate": "Zerlina Quist" }'),
    );
    const dated = await problemsIn(
      'a.json',
      file('{ "sex": "female", "birthDate": "Zerlina Quist" }'),
    );
    expect([...said, ...dated].join()).not.toMatch(/Zerlina|12/);
  });

  it('does not show a key that is no identifier', async () => {
    const said = await problemsIn('a.json', file('{ "sex": "female", "Zerlina Quist": 1 }'));
    expect(said.join()).not.toContain('Zerlina');
  });

  it('reads a list and a file of lines, and lets a bad one stop no other', async () => {
    const bad = file('{ "sex": "f" }');
    const list = await readInput(fileOf('a.json', `[${file()},${bad},${file()}]`));
    const lines = await readInput(
      fileOf('a.ndjson', `${file()}\n${bad}\n\n{"patient"\n${file()}\n`),
    );
    expect(list.reports.map(({ ok }) => ok)).toEqual([true, false, true]);
    expect(lines.reports.map(({ ok }) => ok)).toEqual([true, false, false, true]);
  });

  it('is not harmed by keys that name a prototype', async () => {
    const said = await problemsIn(
      'a.json',
      file('{ "sex": "female", "__proto__": { "polluted": 1 } }'),
    );
    expect(said).toHaveLength(1);
    expect(Object.getOwnPropertyNames(Object.prototype)).not.toContain('polluted');
  });

  it('refuses nesting beyond reason', async () => {
    const deep = `${'['.repeat(20_000)}${']'.repeat(20_000)}`;
    expect((await problemsIn('a.json', deep)).join()).toContain('nested deeper');
  });

  it('reads what may be said of a person and the sample', async () => {
    const patient =
      '{ "sex": "female", "pregnancy": { "weeks": 20 }, "cigarettesPerDay": "unknown-amount", "diet": { "pattern": "vegan" } }';
    const report = await onlyReport(
      'a.json',
      file(
        patient,
        undefined,
        ', "context": { "bleeding": "none", "fasting": true }, "wishes": { "language": "ar" }',
      ),
    );
    expect(report.patient.pregnancy).toEqual({ weeks: 20, trimester: null });
    expect(report.patient.diet).toMatchObject({ pattern: 'vegan', avoids: [], lowCost: false });
    expect(report.context).toMatchObject({ bleeding: ['none'], fasting: true });
    expect(report.wishes).toEqual({ language: 'ar' });
    expect(reportsOf(await readInput(fileOf('x', file())))).toHaveLength(1);
  });
});

describe('the schema of a report file', () => {
  it('describes the fields and allows no others', () => {
    expect(reportFileSchema()).toMatchObject({
      type: 'object',
      additionalProperties: false,
      required: ['patient', 'collected', 'results'],
    });
  });
});

describe('a file no reader can take', () => {
  it.each([
    ['nothing', new Uint8Array(), 'cannot read an empty file'],
    ['only blanks', new TextEncoder().encode(' \n\t'), 'cannot read an empty file'],
    ['a PDF', new TextEncoder().encode('%PDF-1.7 x'), 'cannot read a PDF file'],
    ['a binary', Uint8Array.from({ length: 500 }, (_, i) => i % 7), 'cannot read a binary file'],
    [
      '200 MB',
      new Uint8Array(200 * 1024 * 1024),
      'cannot read a file of 200 MB; expected at most 8 MB',
    ],
  ])('says one clear sentence of %s', async (_, bytes, expected) => {
    const { reports } = await readInput({ name: 'a.json', bytes });
    const problems = reports.flatMap((read) => (read.ok ? [] : read.problems));
    expect(problems).toHaveLength(1);
    expect(`${problems[0]?.cannot}; expected ${problems[0]?.expected}`).toContain(expected);
  });
});

describe('what the operator says of the person of a report file', () => {
  const text = JSON.stringify({
    patient: {},
    results: [{ analyte: 'ferritin', value: 9, unit: 'ug/L' }],
  });

  it('fills the sex and the day that the file must say and does not', async () => {
    const options = { patient: { sex: 'female' }, collected: '2026-11-20' };
    const [read] = (await readInput(fileOf('a.json', text), options)).reports;
    expect(read?.ok && [read.value.patient.sex, read.value.panel.collected]).toEqual([
      'female',
      '2026-11-20',
    ]);
  });

  it('does not overrule the file', async () => {
    const other = JSON.stringify({
      ...JSON.parse(text),
      patient: { sex: 'male' },
      collected: '2026-11-20',
    });
    const intake = await readInput(fileOf('a.json', other), { patient: { sex: 'female' } });
    expect(intake.reports[0]?.ok).toBe(false);
  });
});

describe('a list of reports that are all wrong', () => {
  it.each([
    [4999, 4999],
    [5000, 5000],
    [5001, 5001],
    [60_000, 5001],
  ])('of %i is given up after 5,000 faults', async (wrong, told) => {
    const text = JSON.stringify(Array.from({ length: wrong }, () => ({ a: 1 })));
    const { reports } = await readInput(fileOf('a.json', text));
    expect(reports).toHaveLength(told);
    const last = reports.at(-1);
    expect(last?.ok === false && last.problems[0]?.code).toBe(
      wrong > 5000 ? 'too-many-faults' : 'missing',
    );
  });
});

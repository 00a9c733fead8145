// A short run of the fuzz, and files of a megabyte that must be read or refused within a second.
import { describe, expect, it } from 'vitest';
import { openReports, readInput } from '../../src/intake/index.js';
import { inMemory } from '../../src/intake/large-file.js';
import { fuzzReaders } from './fuzz.js';

describe('broken files', () => {
  it('never crash a reader and never make up a value', async () => {
    await fuzzReaders(1500, 20261125);
  }, 60_000);
});

describe('a megabyte', () => {
  const fill = (text: string) =>
    text.repeat(Math.ceil(1_000_000 / text.length)).slice(0, 1_000_000);
  const each = (line: (i: number) => string) =>
    Array.from({ length: 1_000_000 / line(10_000).length }, (_, i) => line(i)).join('');
  it.each([
    ['blanks in a cell', 'a.csv', `id,Ferritin (ug/L)\n7,9${fill(' ')}9\n`],
    ['open brackets', 'a.json', fill('[')],
    ['one long string', 'a.json', `"${fill('\\\\')}"`],
    [
      'escapes',
      'a.hl7',
      `MSH|^~\\&|||||||ORU^R01\rPID|1||7\rOBX|1|NM|^Ferritin||${fill('\\T\\')}|ug/L\r`,
    ],
    [
      'unknown tests',
      'a.csv',
      `id,collected,test,value,unit\n${fill('7,2026-11-20,Quibbleglobin,9,ug/L\n')}`,
    ],
    ['prose', 'pasted', fill('The quick brown fox 12 jumps over the lazy dog 9 times. \n')],
    ['one line of digits', 'pasted', fill('9 ')],
    ['one line of words', 'pasted', `Ferritin ${fill('a ')}`],
    ['one header', 'a.csv', fill('Ferritin (')],
    ['columns', 'a.csv', `${fill('Ferritin (ug/L),')}\n7\n`],
    ['quotes', 'a.csv', fill('"')],
    ['bars', 'pasted', fill('| ')],
    ['names and values in turn', 'pasted', fill('Ferritin\n9\n')],
    ['patients in one message', 'a.hl7', `MSH|^~\\&|||||||ORU^R01\r${fill('PID|1||7\r')}`],
    ['empty results', 'a.json', `{"patient":{"sex":"female"},"results":[${fill('{},')}{}]}`],
    [
      'names and codes of one test',
      'a.json',
      `{"resourceType":"Observation","code":{"coding":[${Array.from({ length: 12_000 }, (_, i) => `{"system":"http://loinc.org","code":"2276-4","display":"F ${i}"}`).join(',')}]},"valueQuantity":{"value":9,"unit":"ug/L"}}`,
    ],
    [
      'a new word for a sex in every row',
      'a.csv',
      `id,sex,Hb (g/L)\n${each((i) => `${i},q${i},9\n`)}`,
    ],
    ['rows of two signs', 'a.csv', `id,Hb (g/L)\n${fill('7\n')}`],
    ['rows without an id', 'a.csv', `id,Hb (g/L)\n${fill(',9\n')}`],
    [
      'another unknown test in every row',
      'a.csv',
      `id,test,value,unit\n${each((i) => `${i},haemo${i}x,9,g/L\n`)}`,
    ],
    ['objects that are no reports', 'a.ndjson', fill('{}\n')],
    ['objects that are no JSON', 'a.ndjson', fill('{a}\n')],
    ['unknown fields', 'a.json', `{${each((i) => `"k${i}":1,`)}"z":1}`],
    ['empty results of a message', 'a.hl7', `MSH|^~\\&|||||||ORU^R01\rPID|1||7\r${fill('OBX\r')}`],
    [
      'another unknown test in every segment',
      'a.hl7',
      `MSH|^~\\&|||||||ORU^R01\rPID|1||7\r${each((i) => `OBX||NM|^haemo${i}\r`)}`,
    ],
    ['line ends', 'a.hl7', `MSH|^~\\&|||||||ORU^R01\rPID|1||7\r${fill('\r')}`],
    [
      'dates side by side',
      'pasted',
      `Test${fill('\t2026-11-20').slice(0, 400_000)}\n${fill('Hb\t101\tg/L     x\n').slice(0, 600_000)}`,
    ],
  ])('of %s costs no more than seconds of computing on a slow machine', async (_, name, text) => {
    const file = { name, bytes: new TextEncoder().encode(text) };
    const started = process.cpuUsage();
    const { reports } = await readInput(file);
    expect(reports.length).toBeGreaterThan(0);
    const source = await openReports(inMemory(file));
    for (let i = 0; i < source.count; i++) source.read(i);
    expect(process.cpuUsage(started).user).toBeLessThan(4_000_000);
  });
});

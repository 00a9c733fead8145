// A short run of the fuzz, and files of a megabyte that must be read or refused within a second.
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fuzzReaders } from './fuzz.js';

describe('broken files', () => {
  it('never crash a reader and never make up a value', async () => {
    await fuzzReaders(1500, 20261125);
  }, 60_000);
});

describe('a megabyte', () => {
  const fill = (text: string) =>
    text.repeat(Math.ceil(1_000_000 / text.length)).slice(0, 1_000_000);
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
  ])('of %s ends within seconds on a busy machine', async (_, name, text) => {
    const started = performance.now();
    const { reports } = await readInput({ name, bytes: new TextEncoder().encode(text) });
    expect(reports.length).toBeGreaterThan(0);
    expect(performance.now() - started).toBeLessThan(3000);
  });
});

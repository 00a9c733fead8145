// What a table says beside values: the specimen, and a pregnancy.
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fileOf, onlyReport, problemsIn, reportsOf } from './file.js';

describe('what else a table says', () => {
  it.each([
    ['long', 'id,collected,test,specimen,value,unit\n7,2026-11-20,Iron,Urine,9,umol/L\n'],
    ['wide', 'id,collected,Probenmaterial,Iron (umol/L)\n7,2026-11-20,Urin,9\n'],
  ])('passes over a result of another specimen (%s)', async (_, text) => {
    const intake = await readInput(fileOf('a.csv', text));
    expect(reportsOf(intake)).toEqual([]);
    expect(intake.ignored.map(({ cannot }) => cannot)).toEqual([
      expect.stringContaining('serum-iron in urine, not in blood'),
    ]);
  });

  it('leaves open how far a pregnancy is, unless it says so or there is none', async () => {
    const text = (pregnant: string, weeks: string) =>
      `id,sex,pregnant,pregnant weeks,Ferritin (ug/L)\n7,F,${pregnant},${weeks},9\n`;
    const { patient } = await onlyReport('a.csv', text('yes', '20'));
    expect(patient.pregnancy).toEqual({ weeks: 20, trimester: null });
    expect((await onlyReport('a.csv', text('no', ''))).patient.pregnancy).toBeNull();
    const open = await onlyReport('a.csv', text('yes', ''));
    expect(open.patient.pregnancy).toEqual({ weeks: null, trimester: null });
    expect(await problemsIn('a.csv', text('perhaps', ''))).toEqual([
      expect.stringContaining('cannot tell yes from no'),
    ]);
  });
});

// The example files arrive through every earlier room; what a letter is composed from leaves, one for each.
import { readdirSync, readFileSync } from 'node:fs';
import { advise } from '../../src/advise/index.js';
import { readInput } from '../../src/intake/index.js';
import { interpret } from '../../src/interpret/index.js';
import type { LetterInput } from '../../src/letter/index.js';
import { checkReport } from '../../src/report/index.js';
import { clinic, english } from './fixtures.js';

const today = '2026-11-25';
const released = { by: 'Dr Imre Vale', done: 'phoned and seen today' };

export type Example = { readonly name: string; readonly input: LetterInput };

/** @param folder Report files, beside the clinic's own details where it has them. */
export async function examples(folder = 'examples'): Promise<readonly Example[]> {
  const names = readdirSync(folder).filter(
    (name) => name.endsWith('.json') && name !== 'clinic.json',
  );
  const read = names.map(async (name) => {
    const { reports } = await readInput({ name, bytes: readFileSync(`${folder}/${name}`) });
    return reports.flatMap((written) => {
      const report = written.ok ? checkReport(written.value, today) : written;
      if (!report.ok) throw new Error(`${name}: ${JSON.stringify(report.problems)}`);
      const interpretation = interpret(report.value, today);
      const choices = { steps: null, tabletsPrescribed: null, noFood: false };
      const advice = advise(report.value, interpretation, choices, today);
      const options = {
        analogy: 'shirt-shop' as const,
        checkedBy: null,
        date: today,
        released,
        easyRead: false,
      };
      const input = {
        report: report.value,
        interpretation,
        advice,
        clinic,
        language: english,
        options,
      };
      return [{ name, input }];
    });
  });
  return (await Promise.all(read)).flat();
}

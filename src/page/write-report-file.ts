// The rows of the short form arrive; a report file leaves, for the same reader as any other file.
import type { InputFile } from '../intake/written.js';
import { type Analyte, analytes } from '../terms.js';
import type { FormRow } from './desk.js';

const comparators = /^(<=|>=|<|>)\s*/;

/** Null while no value was typed. Sex and day of the sample in it stand for nothing: they are said elsewhere on the page. */
export function writeReportFile(rows: Partial<Record<Analyte, FormRow>>): InputFile | null {
  const results = analytes.flatMap((analyte) => {
    const row = rows[analyte];
    if (row === undefined || row.value.trim() === '') return [];
    const value = row.value.trim();
    const comparator = comparators.exec(value)?.[1] ?? null;
    const [low, high] = [row.low.trim(), row.high.trim()];
    const interval = low === '' && high === '' ? null : { low: low || null, high: high || null };
    return [
      {
        analyte,
        value: value.replace(comparators, ''),
        ...(comparator === null ? {} : { comparator }),
        ...(row.unit === '' ? {} : { unit: row.unit }),
        ...(interval === null ? {} : { interval }),
      },
    ];
  });
  if (results.length === 0) return null;
  // A report file must name a sex and a day; whoever reads this one forgets both and asks the person's part.
  const report = { patient: { sex: 'unknown' }, collected: '2000-01-01', results };
  const bytes = new TextEncoder().encode(JSON.stringify(report));
  return { name: 'form.json', bytes };
}

// The rows of the short form arrive; a report file leaves, for the same reader as any other file.
import type { InputFile } from '../intake/written.js';
import { type Analyte, analytes } from '../terms.js';
import type { FormRow } from './desk.js';

const comparators = /^(<=|>=|<|>)\s*/;

/** Null while no value was typed. Sex and day of the sample are said elsewhere on the page. */
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
  const bytes = new TextEncoder().encode(JSON.stringify({ patient: {}, results }));
  return { name: 'form.json', bytes };
}

// One JSON object arrives, with its place; a written report leaves, or every problem of it.
import { type Checked, faulty, fine, type Place, type Problem } from '../../problem.js';
import { readDate } from '../date-as-written.js';
import { fault } from '../fault.js';
import { readInterval } from '../interval-as-written.js';
import { provesDecimalComma, readBesideCommas, readNumberAsWritten } from '../number-as-written.js';
import type { WrittenInterval, WrittenPanel, WrittenReport, WrittenResult } from '../written.js';
import { type ReportFile, type ResultInFile, reportFile } from './report-file.js';
import { knownKeys } from './known-keys.js';
import { schemaProblems } from './schema-problems.js';

/**
 * Reads one report object. Fields absent from the file are null; none is guessed.
 * Problems: every field that does not fit the schema, values and dates that cannot be read.
 * @example readReport({ patient: { sex: 'female' }, collected: '2026-11-25', results: [...] }, place)
 */
export function readReport(value: unknown, place: Place): Checked<WrittenReport> {
  if (hasLongList(value)) {
    const more = { expected: `at most ${mostListed} in any list` };
    return faulty([fault('too-many', place, 'cannot read a report with a list this long', more)]);
  }
  const read = reportFile.safeParse(value);
  if (!read.success) return faulty(schemaProblems(read.error, value, place, knownKeys));
  const problems: Problem[] = [];
  const report = written(read.data, place, problems);
  return problems.length === 0 ? fine(report) : faulty(problems);
}

/** A lifetime of blood tests fits; more would take long to say what is wrong with. */
const mostListed = 2000;

function hasLongList(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  if (Array.isArray(value) && value.length > mostListed) return true;
  return Object.values(value).some(hasLongList);
}

function written(file: ReportFile, place: Place, problems: Problem[]): WrittenReport {
  const { patient, context } = file;
  const collected = dayOf(file.collected, { ...place, field: 'collected' }, problems);
  const birth = patient.birthDate ?? null;
  const { pregnancy, diet } = patient;
  const bleeding = context?.bleeding ?? [];
  return {
    place,
    patient: {
      id: patient.id ?? null,
      name: patient.name ?? null,
      birthDate:
        birth === null ? null : birthDay(birth, { ...place, field: 'patient.birthDate' }, problems),
      ageYears: patient.ageYears ?? null,
      ageMonths: patient.ageMonths ?? null,
      sex: patient.sex,
      pregnancy: pregnancy
        ? {
            weeks: 'weeks' in pregnancy ? pregnancy.weeks : null,
            trimester: 'trimester' in pregnancy ? pregnancy.trimester : null,
          }
        : null,
      afterBirthWeeks: patient.afterBirthWeeks ?? null,
      menstruating: patient.menstruating ?? null,
      altitudeMetres: patient.altitudeMetres ?? null,
      cigarettesPerDay: patient.cigarettesPerDay ?? null,
      diet: diet
        ? {
            pattern: diet.pattern ?? null,
            avoids: diet.avoids ?? [],
            lowCost: diet.lowCost ?? false,
            fastingMonth: diet.fastingMonth ?? false,
            cuisines: diet.cuisines ?? [],
          }
        : null,
      conditions: patient.conditions ?? [],
      medicines: patient.medicines ?? [],
    },
    panel: {
      collected: collected.date,
      results: results(file.results, place, 'results', problems),
    },
    context: {
      symptoms: context?.symptoms ?? [],
      bleeding: typeof bleeding === 'string' ? [bleeding] : bleeding,
      ironTabletHoursBefore: context?.ironTabletHoursBefore ?? null,
      ironInjectionDaysBefore: context?.ironInjectionDaysBefore ?? null,
      transfusionDaysBefore: context?.transfusionDaysBefore ?? null,
      fasting: context?.fasting ?? null,
      sampleTime: context?.sampleTime ?? collected.time,
      notes: context?.notes ?? [],
    },
    previous: (file.previous ?? []).map((panel, i): WrittenPanel => {
      const field = `previous[${i}]`;
      const day = dayOf(panel.collected, { ...place, field: `${field}.collected` }, problems);
      return {
        collected: day.date,
        results: results(panel.results, place, `${field}.results`, problems),
      };
    }),
    wishes: file.wishes ? { language: file.wishes.language ?? null } : null,
  };
}

function results(
  list: readonly ResultInFile[],
  place: Place,
  field: string,
  problems: Problem[],
): WrittenResult[] {
  const decimalComma = list.some(({ value }) => provesDecimalComma(String(value).trim()));
  return list.map((result, i) => {
    const here = { ...place, field: `${field}[${i}]` };
    return writtenResult(result, here, decimalComma, problems);
  });
}

function writtenResult(
  result: ResultInFile,
  place: Place,
  decimalComma: boolean,
  problems: Problem[],
): WrittenResult {
  const unit = result.unit ?? null;
  const text = String(result.value);
  const number = decimalComma ? readBesideCommas(text) : readNumberAsWritten(text);
  const valuePlace = { ...place, field: `${place.field}.value` };
  // What is no number at all is told with the units and limits, so that one reading shows every fault.
  if (!number.ok && number.code !== 'not-a-number') {
    problems.push(
      fault(number.code, valuePlace, number.cannot, { found: text, expected: number.expected }),
    );
  }
  const spoken = result.comparator ?? null;
  const inValue = number.ok ? number.comparator : null;
  if (spoken !== null && inValue !== null && spoken !== inValue) {
    problems.push(
      fault('two-comparators', valuePlace, 'cannot tell which comparator holds', {
        found: `${spoken} and ${inValue}`,
        expected: 'the same one, or one of them only',
      }),
    );
  }
  return {
    place,
    analyte: result.analyte,
    name: result.name ?? result.analyte,
    value: number.ok ? number.value : text,
    comparator: inValue ?? spoken,
    unit,
    interval: interval(
      result.interval ?? null,
      unit,
      { ...place, field: `${place.field}.interval` },
      problems,
    ),
    labFlag: result.labFlag ?? null,
    status: result.status ?? null,
    confirmed: result.confirmed ?? false,
  };
}

function interval(
  given: NonNullable<ResultInFile['interval']> | null,
  unit: string | null,
  place: Place,
  problems: Problem[],
): WrittenInterval | null {
  if (given === null) return null;
  const side = (name: 'low' | 'high') => {
    const amount = given[name] ?? null;
    if (amount === null) return null;
    const read = readNumberAsWritten(String(amount));
    if (read.ok && read.comparator === null) return read.value;
    problems.push(
      fault(
        'bad-interval',
        { ...place, field: `${place.field}.${name}` },
        'cannot read this end of the interval',
        {
          found: String(amount),
          expected: 'a plain number',
        },
      ),
    );
    return null;
  };
  const printed = readInterval(given.text ?? null, unit);
  const [low, high] = [side('low'), side('high')];
  const text = printed?.text ?? null;
  if (low === null && high === null && text === null) return null;
  return { low: low ?? printed?.low ?? null, high: high ?? printed?.high ?? null, text };
}

function dayOf(
  text: string,
  place: Place,
  problems: Problem[],
): { readonly date: string | null; readonly time: string | null } {
  const read = readDate(text);
  if (read !== null) return read;
  problems.push(
    fault('bad-date', place, 'cannot read this as a date', {
      found: text,
      expected: 'such as 2026-11-25',
    }),
  );
  return { date: null, time: null };
}

/** As `dayOf`, but what was found stays untold: a birth date is the person's own. */
function birthDay(text: string, place: Place, problems: Problem[]): string | null {
  const read = readDate(text);
  if (read === null) {
    problems.push(
      fault('bad-date', place, 'cannot read this as a date', { expected: 'such as 1984-03-09' }),
    );
  }
  return read?.date ?? null;
}

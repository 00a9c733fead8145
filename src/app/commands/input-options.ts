// What the operator says of a file and its one person arrives on the command line; options for the readers leave.
import type { Argv } from 'yargs';
import { type InputOptions, readAge, readColumnMap } from '../../intake/index.js';
import { readDate } from '../../report/index.js';
import { sexes } from '../../terms.js';
import { readInputFile } from '../input.js';
import { sentences } from '../kit.js';
import { Stop, status } from '../status.js';

/** Options of every command that reads one file of results; facts fill only what the file leaves open. */
export function inputOptions<T>(yargs: Argv<T>) {
  return yargs
    .option('columns', { type: 'string', describe: 'File that says what columns mean' })
    .option('sex', { choices: sexes, describe: 'Sex, where the file does not say it' })
    .option('born', { type: 'string', describe: 'Birth date, YYYY-MM-DD' })
    .option('age', { type: 'string', describe: 'Age such as 34, or "8 months"' })
    .option('pregnant-weeks', { type: 'string', describe: 'Whole weeks of pregnancy' })
    .option('collected', { type: 'string', describe: 'Day of the sample, YYYY-MM-DD' });
}

type Words = Awaited<ReturnType<typeof inputOptions<object>>['argv']>;
export type InputWords = Pick<
  Words,
  'columns' | 'sex' | 'born' | 'age' | 'pregnantWeeks' | 'collected'
>;

/** Stops with status 64 where a fact cannot be read, 65 where the column map cannot. */
export async function inputOptionsOf(words: InputWords): Promise<InputOptions> {
  const { columns, sex, born, age, pregnantWeeks, collected } = words;
  const aged = age === undefined ? null : ageOf(age);
  return {
    ...(columns === undefined ? {} : { columns: await columnMapOf(columns) }),
    ...(collected === undefined ? {} : { collected: dayOf('--collected', collected) }),
    patient: {
      ...(sex === undefined ? {} : { sex }),
      ...(born === undefined ? {} : { birthDate: dayOf('--born', born) }),
      ...(aged === null ? {} : { ageYears: aged.years, ageMonths: aged.months }),
      ...(pregnantWeeks === undefined
        ? {}
        : { pregnancy: { weeks: weeksOf(pregnantWeeks), trimester: null } }),
    },
  };
}

const largestMap = 1024 * 1024;

/** The column map of a file. Stops with status 65 and every problem of it. */
export async function columnMapOf(path: string) {
  const map = readColumnMap(await readInputFile(path, largestMap));
  if (!map.ok) throw new Stop(status.badData, sentences(map.problems));
  return map.value;
}

function dayOf(option: string, written: string): string {
  const day = readDate(written);
  if (day === null)
    throw new Stop(status.usage, [`${option}: expected a date such as 2026-11-25.`]);
  return day;
}

function ageOf(written: string) {
  const age = readAge(written);
  if (age === null)
    throw new Stop(status.usage, ['--age: expected whole years such as 34, or "8 months".']);
  return age;
}

function weeksOf(written: string): number {
  if (!/^\d{1,2}$/.test(written.trim()))
    throw new Stop(status.usage, ['--pregnant-weeks: expected whole weeks such as 20.']);
  return Number(written);
}

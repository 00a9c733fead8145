// A line of the results with its doubt or its fault arrives; what to ask of it leaves, in the language of the page.
import { readUnit, unitsOf } from '../knowledge/units.js';
import { type Problem, sayProblem, visible } from '../problem.js';
import { acceptedUnits, convert } from '../report/convert.js';
import { judge } from '../report/plausible.js';
import { readNumber } from '../report/number.js';
import type { Doubt } from '../report/report.js';
import type { Analyte } from '../terms.js';
import { isolated, type PageKey, type PageTongue } from './words.js';

/** A sentence, and the language it is in where that is not the page's. */
export type Asked = { readonly text: string; readonly english: boolean };

type Written = { readonly analyte: Analyte; readonly value: string; readonly unit: string };

/**
 * The question of a doubtful value. The core's own words in English; the same question, shorter, elsewhere.
 * @example askDoubt(tongue, { analyte: 'ferritin', value: '5580', unit: 'ng/dL' }, doubt).text
 */
export function askDoubt({ tag, say }: PageTongue, line: Written, doubt: Doubt): Asked {
  if (tag === 'en') return { text: doubt.question, english: true };
  const { value } = line;
  const likely = doubt.likelyUnit === null ? null : isolated(`${value} ${doubt.likelyUnit}`);
  const written = shown(line);
  const text =
    likely === null
      ? say('understood.ask-value', { written })
      : say('understood.ask-unit', { written, likely });
  return { text, english: false };
}

const plain: Readonly<Record<string, PageKey>> = {
  'unit-missing': 'understood.no-unit',
  'unit-not-accepted': 'understood.other-unit',
  'not-a-number': 'understood.no-number',
  'value-unread': 'understood.no-number',
};

/** What would be asked of a written value, for reports that another line keeps from being measured; null without a question. */
export function doubtOf({ analyte, value, unit }: Written): Doubt | null {
  const read = readNumber(value);
  const code = readUnit(unit);
  if (!read.ok || code === null || !acceptedUnits(analyte).includes(code)) return null;
  const { comparator } = read;
  const judged = judge({ analyte, value: read.value, unit: code, comparator, interval: null });
  return judged.verdict === 'doubtful' ? judged.doubt : null;
}

/** Why a line cannot be used. A fault the page has no words for is told as the command line tells it, in English. */
export function tellFault({ tag, say }: PageTongue, line: Written, problem: Problem): Asked {
  const english = { text: sayProblem(problem), english: true };
  if (tag === 'en') return english;
  const key = plain[problem.code];
  if (key !== undefined) return { text: say(key), english: false };
  if (problem.code !== 'value-impossible') return english;
  const units = possibleUnits(line.analyte, line.value);
  const likely = units.map((unit) => isolated(`${line.value} ${unit}`)).join(' / ');
  const written = shown(line);
  const text =
    units.length === 0
      ? say('understood.impossible', { written })
      : say('understood.impossible-unit', { written, likely });
  return { text, english: false };
}

/**
 * Units in which the same digits would be an everyday value; of several spellings of one unit the first.
 * @example possibleUnits('haemoglobin', '13.2') // ['g/dL']
 */
export function possibleUnits(analyte: Analyte, digits: string): readonly string[] {
  const read = readNumber(digits);
  if (!read.ok) return [];
  const { value } = read;
  const seen = new Set<number>();
  return unitsOf(analyte).flatMap(({ code }) => {
    const ours = convert(analyte, value, code);
    if (seen.has(ours)) return [];
    seen.add(ours);
    const judged = judge({ analyte, value, unit: code, comparator: null, interval: null });
    return judged.verdict === 'plausible' ? [code] : [];
  });
}

const shown = ({ value, unit }: Written) => isolated(visible(`${value} ${unit}`.trim()));

// Graded results arrive; a row for each leaves: what it is, where it lies, what that means.
import type { GradedResult } from '../../interpret/interpretation.js';
import type { Analyte, Pattern } from '../../terms.js';
import type { Content, ResultTold, Said } from '../content.js';
import type { Told } from '../letter-input.js';
import { numberLine } from './number-line.js';
import { sideOf } from './side.js';
import { tellTrend } from './trend.js';
import { valueLine } from './value-line.js';

/** Told in full, with a line; the others in one short row. */
const explained = [
  'haemoglobin',
  'ferritin',
  'transferrin-saturation',
  'serum-iron',
  'transferrin',
  'tibc',
] as const;
type Explained = (typeof explained)[number];
const isExplained = (analyte: Analyte): analyte is Explained =>
  (explained as readonly Analyte[]).includes(analyte);

export function tellResults(told: Told): Content['results'] {
  const { interpretation, voice } = told;
  const rows = interpretation.results.filter(isTold).map((result) => row(told, result));
  const lines = rows.some(({ line }) => line !== null);
  return {
    heading: voice.say('results.heading'),
    howToRead: lines ? [voice.say('results.how-to-read')] : [],
    rows,
    notMeasured: notMeasured(told),
  };
}

/** Room for iron that nobody measured would only repeat the carriers. */
function isTold({ analyte, derived }: GradedResult): boolean {
  return derived === null || (analyte !== 'tibc' && analyte !== 'uibc');
}

function row(told: Told, result: GradedResult): ResultTold {
  const { say } = told.voice;
  const { analyte } = result;
  return {
    analyte,
    position: result.doubt === null ? result.position : null,
    name: say(`result.${analyte}.name`),
    whatItIs: say(`result.${analyte}.what`),
    value: result.copied.value,
    unit: result.copied.unit,
    interval: result.copied.interval,
    valueLine: valueLine(told.voice, result),
    verdict: verdict(told, result),
    provisos: provisos(told, result),
    meaning: meaning(told, result),
    change: change(told, analyte),
    line: isExplained(analyte) ? numberLine(told.voice, result) : null,
    trend: isExplained(analyte) ? tellTrend(told, result) : null,
  };
}

function verdict({ voice: { say } }: Told, { doubt, position }: GradedResult): Said {
  if (doubt !== null) return say('verdict.doubtful');
  return say(position === null ? 'verdict.no-range' : `verdict.${position}`);
}

function provisos(told: Told, result: GradedResult): readonly Said[] {
  return [...provisosBefore(told, result), ...workedOut(told, result)];
}

function meaning(told: Told, result: GradedResult): readonly Said[] {
  const { analyte, doubt } = result;
  const level = doubt === null && isExplained(analyte) ? meaningOfLevel(told, analyte, result) : [];
  return [...provisosBefore(told, result), ...level, ...workedOut(told, result)];
}

function provisosBefore(told: Told, result: GradedResult): readonly Said[] {
  const { comparator, doubt } = result;
  if (doubt !== null) return [];
  const { say } = told.voice;
  return [
    ...(comparator === null ? [] : [say(comparator.startsWith('<') ? 'value.less' : 'value.more')]),
    ...disagreement(told, result),
  ];
}

function workedOut({ voice }: Told, { doubt, derived }: GradedResult): readonly Said[] {
  return doubt !== null || derived === null ? [] : [voice.say('value.worked-out')];
}

/** Patterns in which the iron numbers cannot be taken at their word. */
const misleading: readonly Pattern[] = ['post-iron-dose-artefact', 'discordant-or-implausible'];

function meaningOfLevel(
  { interpretation, voice: { say } }: Told,
  analyte: Explained,
  { level, position }: GradedResult,
): readonly Said[] {
  if (misleading.includes(interpretation.pattern.main)) return [];
  const side = level === 'not-measured' ? sideOf(position) : level;
  return side === null ? [] : [say(`result.${analyte}.${side}`)];
}

/** Where the laboratory's interval and the guideline differ, both are said, gently. */
function disagreement(
  { voice: { say } }: Told,
  { comparedWith, level, position }: GradedResult,
): readonly Said[] {
  const side = sideOf(position);
  if (comparedWith?.by !== 'laboratory' || side === null || side === level) return [];
  if (level === 'not-measured') return [];
  if (side === 'usual' && level !== 'usual') return [say(`disagree.usual.${level}`)];
  return side !== 'usual' && level === 'usual' ? [say(`disagree.${side}.usual`)] : [];
}

function change({ interpretation, voice }: Told, analyte: Analyte): Said | null {
  const found = interpretation.changes.find((each) => each.analyte === analyte);
  if (found === undefined) return null;
  return voice.say(`change.${found.verdict}`, { date: voice.date(found.earlier.collected) });
}

/** What was not measured and would matter is said; silence would reassure. */
function notMeasured({ interpretation, voice: { say } }: Told): readonly Said[] {
  const has = (analyte: Analyte) =>
    interpretation.results.some((result) => result.analyte === analyte);
  const always = (['haemoglobin', 'ferritin'] as const).filter((analyte) => !has(analyte));
  const wanted = interpretation.pattern.missing.filter((analyte) => !has(analyte));
  return [...new Set<Analyte>([...always, ...wanted])].map((analyte) =>
    say(`not-measured.${analyte}`),
  );
}

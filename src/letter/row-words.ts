// The id of a knowledge row arrives; what it is for, in English words, leaves.
import type { SourceUsed } from '../interpret/interpretation.js';
import {
  ferritinLimits,
  positionBands,
  saturationLimits,
  usualIntervals,
} from '../knowledge/cut-offs.js';
import { allPathways, diseaseRules, holdRules, variations } from '../knowledge/follow-up.js';
import { altitudes, groupsByAge, haemoglobinLimits, smokings } from '../knowledge/groups.js';
import { companionRules, patternProfiles, patternRules } from '../knowledge/pattern-rules.js';
import type { Row } from '../knowledge/row.js';
import { sentencesOf } from './explain.js';
import { listed, type Speaker, sayUnit, within } from './say-facts.js';

type Words = Speaker['words'];
type Saying = (words: Words) => string;

const whole = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * What a row is for; empty where its place in the source says it.
 * @example sayRow('ferritin-low-5-and-over', words) // 'ferritin low, below'
 */
export function sayRow(rule: string, words: Words): string {
  const known = sayings.get(rule);
  if (known !== undefined) return known(words);
  if (sentencesOf(`row.${rule}`).length > 0) return words(`row.${rule}`);
  return whole(rule.replaceAll('-', ' ')).replace(/\b(uk|iom|efsa)\b/i, (name) =>
    name.toUpperCase(),
  );
}

/** @example sayNumber('30 ug/L') // '30 µg/L' */
export function sayNumber(number: NonNullable<SourceUsed['number']>): string {
  const [, figures, unit] = /^(.*\d) (\S+)$/.exec(number) ?? [];
  const months = Number(figures);
  if (unit === 'mo' && months > 24 && months % 12 === 0) return `${months / 12} ${sayUnit('a')}`;
  const plain = figures === undefined ? number : `${figures} ${sayUnit(unit ?? '')}`.trim();
  return plain.replaceAll('x ', '× ').replace(/^(\S+) to \1(?= )/, '$1');
}

const sayings: ReadonlyMap<string, Saying> = new Map<string, Saying>([
  ...each(haemoglobinLimits, ({ band, group }, words) =>
    words(`row.haemoglobin.${band}`, { group: words(`group.${group}`) }),
  ),
  ...each(ferritinLimits, ({ role }, words) => words(`row.ferritin.${role}`)),
  ...each(saturationLimits, ({ role }, words) => words(`row.saturation.${role}`)),
  ...each(usualIntervals, ({ analyte }, words) =>
    words('row.interval', { test: within(words, analyte) }),
  ),
  ...each(positionBands, ({ analyte }, words) =>
    words('row.band', { test: within(words, analyte) }),
  ),
  ...each(variations, ({ analyte }, words) =>
    words('row.variation', { test: within(words, analyte) }),
  ),
  ...each(groupsByAge, ({ group }, words) =>
    words('row.group', { group: words(`group.${group}`) }),
  ),
  ...each(altitudes, (_row, words) => words('row.altitude')),
  ...each(smokings, (_row, words) => words('row.smoking')),
  ...each(holdRules, ({ analyte, side }, words) =>
    words(`row.hold.${side}`, { test: within(words, analyte) }),
  ),
  ...each(diseaseRules, ({ condition, role }, words) =>
    words(`row.disease.${role}`, { condition: words(`condition.${condition}`) }),
  ),
  ...each(allPathways, () => ''),
  ...each([...patternRules, ...companionRules], (row, words) => patternWords('rule', row, words)),
  ...each(patternProfiles, (row, words) => patternWords('profile', row, words)),
]);

function each<R extends Row>(
  rows: readonly R[],
  say: (row: R, words: Words) => string,
): readonly (readonly [string, Saying])[] {
  return rows.map((row) => [row.id, (words: Words) => say(row, words)] as const);
}

type PatternWords = {
  readonly pattern: string;
  readonly when: Readonly<Partial<Record<string, readonly string[]>>>;
  readonly needs?: readonly string[];
  readonly without?: readonly string[];
};

/** A rule of the decision table with its condition spelled out, so that it can be checked by hand. */
function patternWords(kind: 'rule' | 'profile', row: PatternWords, words: Words): string {
  const facts = (names: readonly string[]) =>
    names.map((name) => words(`row.fact.${name}`)).join(', ');
  const { needs = [], without = [] } = row;
  const when = [
    ...(needs.length === 0 ? [] : [facts(needs)]),
    ...Object.entries(row.when).map(([test, some = []]) =>
      words('row.when', {
        test: within(words, test),
        levels: listed(
          some.map((level) => words(`level.${level}`)),
          'or',
          words,
        ),
      }),
    ),
    ...(without.length === 0 ? [] : [words('row.without', { facts: facts(without) })]),
  ];
  const pattern = words(`pattern.${row.pattern}`);
  return when.length === 0
    ? words('row.rule.always', { pattern })
    : words(`row.${kind}`, { pattern, when: when.join(', ') });
}

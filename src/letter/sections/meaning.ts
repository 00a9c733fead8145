// Pattern and flags arrive; what they may mean in everyday words leaves, short paragraph by short paragraph.
import type { Flag, Pattern } from '../../terms.js';
import type { Content, Said } from '../content.js';
import { isLetterKey } from '../english.js';
import { needsCarer } from '../letter-ages.js';
import type { Told } from '../letter-input.js';

const lowIron: readonly Pattern[] = [
  'early-low-intake',
  'iron-deficiency-without-anaemia',
  'iron-deficient-erythropoiesis',
  'iron-deficiency-anaemia',
  'mixed-inflammation-and-iron-deficiency',
];
export const isLowIron = (pattern: Pattern): boolean => lowIron.includes(pattern);

const most = 3;

export function tellMeaning(told: Told): Content['meaning'] {
  const { interpretation, voice } = told;
  const { main, companions } = interpretation.pattern;
  const patterns = [main, ...companions.filter((pattern) => pattern !== main)].slice(0, 2);
  const causes = isLowIron(main) ? [cause(told)] : [];
  return {
    heading: voice.say('meaning.heading'),
    paragraphs: [
      ...(told.options.easyRead ? [] : [[voice.say('meaning.iron')]]),
      ...patterns.map((pattern) => [voice.say(`meaning.${pattern}`)]),
      [...causes, ...flagsTold(told)],
    ].filter((paragraph) => paragraph.length > 0),
  };
}

/** Common causes, said only as far as they can hold for this person. */
function cause({ report, voice: { say } }: Told): Said {
  const { sex, menstruating, pregnancy } = report.patient;
  if (needsCarer(report.patient)) return say('cause.low.child');
  if (pregnancy !== null) return say('cause.low.pregnant');
  if (sex === 'unknown') return say('cause.low.sex-unknown');
  return say(sex === 'female' && menstruating !== false ? 'cause.low.periods' : 'cause.low');
}

/** Flags that a person can make use of; the others are for the clinician's sheet. */
function flagsTold({ interpretation, advice, voice: { say } }: Told): readonly Said[] {
  const seen = new Set<Flag>();
  const told: Said[] = [];
  for (const { flag } of interpretation.flags) {
    const key = `flag.${flag}`;
    if (seen.has(flag) || !isLetterKey(key)) continue;
    seen.add(flag);
    // The caution about illness says the same.
    if (flag === 'crp-raised' && advice.cautions.includes('illness-changes-results')) continue;
    told.push(say(key));
  }
  return told.slice(0, most);
}

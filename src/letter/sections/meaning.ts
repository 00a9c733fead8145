// Pattern and flags arrive; what they may mean in everyday words leaves, short paragraph by short paragraph.
import type { Flag, Pattern } from '../../terms.js';
import type { Content, Said } from '../content.js';
import { needsCarer } from '../letter-ages.js';
import type { Told } from '../letter-input.js';
import { tellPicture } from './picture.js';

const lowIron: readonly Pattern[] = [
  'early-low-intake',
  'iron-deficiency-without-anaemia',
  'iron-deficient-erythropoiesis',
  'iron-deficiency-anaemia',
  'mixed-inflammation-and-iron-deficiency',
];
const isLowIron = (pattern: Pattern): boolean => lowIron.includes(pattern);

export function tellMeaning(told: Told): Content['meaning'] {
  const { interpretation, voice } = told;
  const { main, companions } = interpretation.pattern;
  const patterns = [...new Set([main, ...companions])];
  return {
    heading: voice.say('meaning.heading'),
    paragraphs: [
      // The picture in words says the same of iron used again; twice would cost a letter its second page.
      tellPicture(told) === null ? [voice.say('meaning.iron')] : [],
      ...patterns.map((pattern) => [voice.say(`meaning.${pattern}`)]),
      isLowIron(main) ? [cause(told)] : [],
      flagsTold(told),
    ].filter((paragraph) => paragraph.length > 0),
  };
}

/** Common causes, said only as far as they can hold for this person. */
function cause(told: Told): Said {
  const { report, voice } = told;
  const { menstruating, pregnancy } = report.patient;
  if (needsCarer(report.patient)) return voice.say('cause.low.child');
  if (pregnancy !== null) return voice.say('cause.low.pregnant');
  if (menstruating === true) return voice.say('cause.low.periods');
  return voice.say(mayHavePeriods(told) ? 'cause.low.sex-unknown' : 'cause.low');
}

/** Nobody said so, and neither sex nor age rules it out. */
function mayHavePeriods({ advice, interpretation, report }: Told): boolean {
  const { menstruating, sex } = report.patient;
  if (menstruating === false || sex === 'male') return false;
  if (interpretation.flags.some(({ flag }) => flag === 'over-65')) return false;
  return sex === 'unknown' || advice.help.some(({ sign }) => sign === 'periods-stop-daily-life');
}

/** Flags a person can make use of, what casts doubt first; all others are for the clinician's sheet. */
export const toldFlags = [
  'unit-doubtful',
  'value-doubtful',
  'preliminary-result',
  'tsat-printed-differs',
  'indices-disagree',
  'comparator-undecided',
  'recent-transfusion',
  'recent-iron-injection',
  'recent-iron-tablet',
  'recent-bleed',
  'sex-unknown',
  'age-unknown',
  'old-sample',
  'crp-raised',
  'pregnancy',
  'after-birth',
  'kidney-disease',
  'heart-failure',
  'liver-disease',
  'alcohol',
  'thalassaemia',
  'bowel-disease',
  'guidelines-disagree',
  'taking-iron',
  'heavy-periods',
  'blood-donation',
  'fasting-unknown',
] as const satisfies readonly Flag[];
const mostFlags = 3;

/** Flags whose caution at the end of the letter says the same. */
const saidBelow: readonly (readonly [Flag, string])[] = [
  ['crp-raised', 'illness-changes-results'],
  ['heavy-periods', 'periods-are-a-health-matter'],
];

function flagsTold({ interpretation, advice, voice: { say } }: Told): readonly Said[] {
  const raised = new Set<Flag>(interpretation.flags.map(({ flag }) => flag));
  for (const [flag, caution] of saidBelow)
    if (advice.cautions.includes(caution)) raised.delete(flag);
  return toldFlags
    .filter((flag) => raised.has(flag))
    .slice(0, mostFlags)
    .map((flag) => say(`flag.${flag}`));
}

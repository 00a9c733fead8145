// The page's language arrives; a speaker of the call sheet leaves, for a clinician who reads no English.
import type { Reason } from '../interpret/interpretation.js';
import type { CallWords } from '../letter/index.js';
import { sayUnit } from '../report/convert.js';
import { isolated, type PageKey, type PageTongue } from './words.js';

/** A held report has reasons of these codes; those that only refer are summed up. */
const below: readonly string[] = [
  'haemoglobin-below-emergency-limit',
  'haemoglobin-below-severe-line',
  'haemoglobin-below-same-day-limit',
];
const above: readonly string[] = [
  'haemoglobin-above-emergency-limit',
  'ferritin-extreme',
  'ferritin-very-high',
  'ferritin-above-referral-limit',
  'haematocrit-above-same-day-limit',
];
/** A limit that holds only with a sign beside it: both are said. */
const withSign: Readonly<Record<string, readonly PageKey[]>> = {
  'haemoglobin-low-with-danger-symptom': ['why.below', 'why.danger'],
  'haemoglobin-high-with-symptom': ['why.above', 'why.clot'],
  'fever-with-high-ferritin': ['why.above', 'why.fever'],
};
const alone: Readonly<Record<string, PageKey>> = {
  'iron-poisoning-possible': 'why.poisoning',
  'active-bleeding': 'why.bleeding',
  'danger-symptom': 'why.danger',
  'anaemia-with-jaundice-or-fever': 'why.anaemia-unwell',
  'pregnant-and-unwell': 'why.pregnant-unwell',
  'haemoglobin-fell': 'why.fell',
  'laboratory-panic-flag': 'why.mark',
  'laboratory-strong-flag': 'why.mark',
  'under-six-months': 'why.young',
  'values-contradict': 'why.contradict',
};

/** @example composeCallSheet(report, interpretation, clinic, english, callWords(tongue)) */
export function callWords({ tag, say }: PageTongue): CallWords {
  const words: CallWords['words'] = (key, values = {}) =>
    say(
      key.replace(/^analyte\./, 'test.') as PageKey,
      Object.fromEntries(Object.entries(values).map(([name, value]) => [name, isolated(value)])),
    );
  const keysOf = (code: string): readonly PageKey[] => {
    if (below.includes(code)) return ['why.below'];
    if (above.includes(code)) return ['why.above'];
    return withSign[code] ?? [alone[code] ?? 'why.referral'];
  };
  return {
    lang: tag,
    words,
    amount: isolated,
    reason: ({ code, facts }) =>
      keysOf(code)
        .map((key) => say(key, factsOf(facts, words)))
        .join(' '),
  };
}

/** Facts without a test or a unit are of haemoglobin, in g/L. */
function factsOf(facts: Reason['facts'], words: CallWords['words']) {
  const unit = sayUnit(String(facts.unit ?? 'g/L'));
  const amount = (fact: string | number | undefined) =>
    fact === undefined ? '' : isolated(unit === '1' ? `${fact}` : `${fact} ${unit}`);
  return {
    test: words(`analyte.${facts.analyte ?? 'haemoglobin'}`),
    value: amount(facts.value),
    limit: amount(facts.limit),
    from: amount(facts.from),
    to: amount(facts.to),
    collected: isolated(String(facts.collected ?? '')),
    flag: isolated(String(facts.flag ?? '')),
  };
}

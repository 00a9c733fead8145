// Pattern, hold and steps arrive; meaning, urgency and next step leave in at most three sentences.
import type { Interpretation } from '../../interpret/interpretation.js';
import type { Analyte, HoldTier, Pattern } from '../../terms.js';
import type { Content, Said } from '../content.js';
import type { Told } from '../letter-input.js';

/** Patterns in which nothing can be said of how much it matters. */
const undecided: readonly Pattern[] = [
  'discordant-or-implausible',
  'unclear',
  'post-iron-dose-artefact',
];

export function tellSummary(told: Told): Content['summary'] {
  const { interpretation, voice } = told;
  return {
    heading: voice.say('summary.heading'),
    sentences: [
      voice.say(`summary.${openingOf(interpretation)}`),
      ...urgency(told, interpretation.hold.tier),
      nextStep(told),
    ],
  };
}

/** A store well below is low whatever else was measured (WHO 2020); how the blood is doing is not known then. */
function openingOf({ pattern, results }: Interpretation) {
  const of = (analyte: Analyte) => results.find((result) => result.analyte === analyte);
  const store = of('ferritin');
  const low = store?.level === 'low' && store.position === 'well-below';
  return pattern.main === 'unclear' && low && of('haemoglobin') === undefined
    ? ('unclear.store-low' as const)
    : pattern.main;
}

function urgency({ interpretation, voice: { say } }: Told, tier: HoldTier): readonly Said[] {
  const { main } = interpretation.pattern;
  if (tier !== 'routine') return [say(`urgency.${tier}`)];
  if (undecided.includes(main)) return [say('urgency.unknown')];
  return main === 'all-in-range' ? [] : [say('urgency.routine')];
}

/**
 * The first planned step that is more than advice about food. Tests that the clinic is still to plan are
 * nothing to do yet, so what the reader does comes before them, as in the list of steps.
 */
function nextStep({ advice, urgent, voice: { say } }: Told): Said {
  if (urgent) return say('summary.next.urgent');
  const beyondFood = advice.steps.filter(({ step }) => step !== 'eat-for-iron');
  const first =
    beyondFood.find(({ step }) => step !== 'no-further-test' && step !== 'further-tests') ??
    beyondFood.find(({ step }) => step !== 'no-further-test') ??
    beyondFood[0];
  return say(first === undefined ? 'summary.next.none' : `summary.next.${first.step}`);
}

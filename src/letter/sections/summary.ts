// Pattern, hold and steps arrive; meaning, urgency and next step leave in at most three sentences.
import type { Interpretation } from '../../interpret/interpretation.js';
import type { Analyte, HoldTier, Pattern } from '../../terms.js';
import type { Content, Said } from '../content.js';
import type { Told } from '../letter-input.js';
import { inOrderOfDay } from './steps.js';

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
 * The first step of the reader's own that is more than advice about food, as the list of steps has it; where there
 * is none, what the clinic does.
 */
function nextStep({ advice, urgent, voice: { say } }: Told): Said {
  if (urgent) return say('summary.next.urgent');
  const steps = inOrderOfDay(advice.steps.filter(({ step }) => step !== 'eat-for-iron'));
  const own = steps.find(({ step, who }) => who === 'patient' && step !== 'no-further-test');
  const first = own ?? steps.find(({ step }) => step !== 'no-further-test') ?? steps[0];
  return say(first === undefined ? 'summary.next.none' : `summary.next.${first.step}`);
}

// Pattern, hold and steps arrive; meaning, urgency and next step leave in at most three sentences.
import type { HoldTier, Pattern } from '../../terms.js';
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
      voice.say(`summary.${interpretation.pattern.main}`),
      ...urgency(told, interpretation.hold.tier),
      nextStep(told),
    ],
  };
}

function urgency({ interpretation, voice: { say } }: Told, tier: HoldTier): readonly Said[] {
  const { main } = interpretation.pattern;
  if (tier !== 'routine') return [say(`urgency.${tier}`)];
  if (undecided.includes(main)) return [say('urgency.unknown')];
  return main === 'all-in-range' ? [] : [say('urgency.routine')];
}

/** The first planned step that is more than advice about food. */
function nextStep({ advice, urgent, voice: { say } }: Told): Said {
  if (urgent) return say('summary.next.urgent');
  const beyondFood = advice.steps.filter(({ step }) => step !== 'eat-for-iron');
  const first = beyondFood.find(({ step }) => step !== 'no-further-test') ?? beyondFood[0];
  return say(first === undefined ? 'summary.next.none' : `summary.next.${first.step}`);
}

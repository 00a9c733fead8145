// In: a person, their panels. Out: facts beside the levels: recent iron, contradictions, a recent bleed.
import { signs } from '../knowledge/follow-up.js';
import { limit } from '../knowledge/limit.js';
import type { Panel, Result } from '../report/report.js';
import { fallOfHaemoglobin } from './fall.js';
import { saturationFrom } from './derive.js';
import type { Reason } from './interpretation.js';
import type { Levels } from './level.js';
import { plainLevel } from './level.js';
import { above, below } from './measure.js';
import type { Person } from './person.js';

/** Iron taken or injected so lately that iron and saturation say nothing; empty when they are not raised. */
export function recentIron(person: Person, levels: Levels): readonly Reason[] {
  const raised = levels['serum-iron'] === 'high' || levels['transferrin-saturation'] === 'high';
  const { ironTabletHoursBefore: hours, ironInjectionDaysBefore: days } = person.context;
  const tablet = limit('iron-tablet-hours');
  const injection = limit('iron-injection-days');
  if (raised || faceIronRaised(person)) {
    if (days !== null && days <= injection.value)
      return [{ code: 'recent-iron', facts: { how: 'injection', days }, rules: [injection.id] }];
    if (hours !== null && hours <= tablet.value)
      return [{ code: 'recent-iron', facts: { how: 'tablet', hours }, rules: [tablet.id] }];
  }
  return injectionWritLarge(person);
}

/** A raised iron that was doubted still shows that a dose was taken. */
function faceIronRaised(person: Person): boolean {
  const iron = person.all.get('serum-iron');
  if (iron?.doubt?.kind !== 'value') return false;
  const face: Person = { ...person, sure: new Map([['serum-iron', iron]]) };
  return plainLevel(face, 'serum-iron') === 'high';
}

/** Saturation over 100 % with raised TIBC: what an injection leaves, and nothing in the body does. */
function injectionWritLarge(person: Person): readonly Reason[] {
  const face = faceResults(person);
  const found = saturationFrom(face);
  const whole = limit('saturation-whole');
  if (found?.kind !== 'computed' || found.value <= whole.value) return [];
  const carriers = plainLevel({ ...person, sure: face }, 'tibc');
  if (carriers !== 'high') return [];
  const facts = { how: 'unknown', saturation: round(found.value) };
  return [{ code: 'recent-iron', facts, rules: [whole.id] }];
}

/** Results at face value; a doubtful unit makes arithmetic meaningless, so those stay out. */
function faceResults(person: Person): Map<Result['analyte'], Result> {
  return new Map([...person.all].filter(([, { doubt }]) => doubt?.kind !== 'unit'));
}

/**
 * Values that cannot stand together: iron above TIBC, low ferritin beside raised saturation,
 * raised ferritin beside very low saturation.
 */
export function contradictions(person: Person, inflammationExplains = true): readonly Reason[] {
  const face = faceResults(person);
  const computed = saturationFrom(face);
  const printed = face.get('transferrin-saturation')?.quantity;
  const whole = limit('saturation-whole');
  const reasons: Reason[] = [];
  if (computed?.kind === 'computed' && computed.value > whole.value)
    reasons.push({
      code: 'iron-above-tibc',
      facts: { iron: computed.iron, tibc: round(computed.tibc) },
      rules: [whole.id],
    });
  const found = computed?.kind === 'computed' ? computed.value : null;
  const value = printed?.comparator === null ? printed.value : found;
  const ferritin = face.get('ferritin')?.quantity;
  if (value === null || ferritin === undefined) return reasons;
  const [lowFerritin, highSaturation] = [
    limit('contradict-low-ferritin'),
    limit('contradict-high-saturation'),
  ];
  const [highFerritin, lowSaturation] = [
    limit('contradict-high-ferritin'),
    limit('contradict-low-saturation'),
  ];
  const clash = (rules: readonly string[]): Reason => ({
    code: 'ferritin-and-saturation-contradict',
    facts: { ferritin: ferritin.value, saturation: round(value) },
    rules,
  });
  if (below(ferritin, lowFerritin.value) === 'yes' && value > highSaturation.value)
    reasons.push(clash([lowFerritin.id, highSaturation.id]));
  const inflamed = inflammationExplains && person.inflammation === 'raised';
  if (!inflamed && above(ferritin, highFerritin.value) === 'yes' && value < lowSaturation.value)
    reasons.push(clash([highFerritin.id, lowSaturation.id]));
  return reasons;
}

/** A recorded bleed, birth or donation, or haemoglobin fallen further than chance allows. */
export function recentBleed(
  person: Person,
  previous: readonly Panel[],
  panel: Panel,
): readonly Reason[] {
  const recent = signs('sign-recent-bleeding');
  const recorded = person.context.bleeding
    .filter((bleeding) => recent.bleedings.includes(bleeding))
    .map((bleeding) => ({ code: 'bleed-recorded', facts: { bleeding }, rules: [recent.id] }));
  const until = limit('after-birth-until');
  const birth =
    person.group.kind === 'after-birth' && recorded.length === 0
      ? [{ code: 'bleed-recorded', facts: { bleeding: 'recent-birth' }, rules: [until.id] }]
      : [];
  const fall = fallOfHaemoglobin(panel, previous);
  const fell =
    fall === null || !fall.proven
      ? []
      : [
          {
            code: 'haemoglobin-fell',
            facts: { from: fall.from, to: fall.to, collected: fall.collected },
            rules: fall.rules,
          },
        ];
  return [...recorded, ...birth, ...fell];
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

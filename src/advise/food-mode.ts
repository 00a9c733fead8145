// The person and the interpretation arrive; whether food may raise iron, must hold back or says nothing leaves.
import type { Interpretation, Reason } from '../interpret/interpretation.js';
import type { Report } from '../report/report.js';
import type { Analyte, Pattern } from '../terms.js';
import type { Choices, FoodMode } from './advice.js';
import type { ModeReason } from './codes.js';
import type { Person } from './person.js';
import { reason } from './reason.js';

const lowIron: readonly Pattern[] = [
  'early-low-intake',
  'iron-deficiency-without-anaemia',
  'iron-deficient-erythropoiesis',
  'iron-deficiency-anaemia',
];
const inflamed: readonly Pattern[] = [
  'anaemia-of-inflammation',
  'mixed-inflammation-and-iron-deficiency',
];
const doubtful: readonly Pattern[] = ['discordant-or-implausible', 'post-iron-dose-artefact'];

type Found = { readonly mode: FoodMode; readonly why: readonly Reason[] };
type Case = {
  readonly report: Report;
  readonly interpretation: Interpretation;
  readonly person: Person;
};

/** True when the main pattern or a companion is one of these. */
export function looksLike(
  interpretation: Interpretation,
  ...patterns: readonly Pattern[]
): boolean {
  const { main, companions } = interpretation.pattern;
  return [main, ...companions].some((pattern) => patterns.includes(pattern));
}

/** True when a low store is shown, so that iron in food is worth raising. */
export function hasLowIron(interpretation: Interpretation): boolean {
  if (looksLike(interpretation, ...lowIron)) return true;
  return looksLike(interpretation, ...inflamed) && level(interpretation, 'ferritin') === 'low';
}

/**
 * Which food advice may be given, and why. The first rule that holds decides; silence and holding back
 * come before raising, so that no later rule can undo them.
 * @example foodMode(aCase, choices).mode // 'hold-back' with a transferrin saturation of 60 %
 */
export function foodMode(aCase: Case, choices: Choices): Found {
  const silent = silenceReasons(aCase, choices);
  if (silent.length > 0) return found('none', silent);
  const known = knownOverload(aCase);
  if (known) return found('hold-back', ['known-iron-overload', ...raised(aCase.interpretation)]);
  if (isDoubtful(aCase)) return found('none', ['doubtful-data']);
  const high = raised(aCase.interpretation);
  if (high.length > 0) return found('hold-back', high);
  return hasLowIron(aCase.interpretation) ? raiseUnless(aCase) : found('general', [plainly(aCase)]);
}

/** True where iron could harm this person or where the data leave it open. */
export function ironMayHarm(aCase: Case): boolean {
  const { interpretation } = aCase;
  return (
    knownOverload(aCase) ||
    raised(interpretation).length > 0 ||
    isDoubtful(aCase) ||
    aCase.person.has('thalassaemia-trait') ||
    looksLike(interpretation, 'unclear', 'microcytosis-with-normal-iron', 'high-haemoglobin')
  );
}

/** Overload that was known before this report: it outlives any doubt about a value. */
function knownOverload({ report, person }: Case): boolean {
  const transfused =
    report.context.transfusionDaysBefore !== null || person.flagged('recent-transfusion');
  return (
    person.has('haemochromatosis', 'iron-overload', 'thalassaemia-major') ||
    person.takes('iron-chelator') ||
    person.flagged('iron-overload-known') ||
    (person.has('sickle-cell-disease') && transfused)
  );
}

function silenceReasons(aCase: Case, choices: Choices): readonly ModeReason[] {
  const { interpretation, person } = aCase;
  const tier = interpretation.hold.tier;
  const reasons: ModeReason[] = [];
  if (choices.noFood) reasons.push('clinician-switched-off');
  if (tier === 'emergency' || tier === 'same-day') reasons.push('urgent-result');
  if (person.ageMonths !== null && !person.isAtLeast('no-food-under'))
    reasons.push('under-twelve-months');
  return reasons;
}

function isDoubtful({ report, interpretation, person }: Case): boolean {
  return (
    looksLike(interpretation, ...doubtful) ||
    person.flagged('unit-doubtful', 'value-doubtful') ||
    interpretation.results.some((result) => result.doubt !== null) ||
    report.panel.results.some((result) => result.doubt !== null)
  );
}

function raised(interpretation: Interpretation): readonly ModeReason[] {
  const reasons: ModeReason[] = [];
  if (
    level(interpretation, 'transferrin-saturation') === 'high' ||
    isAbove(interpretation, 'transferrin-saturation')
  )
    reasons.push('transferrin-saturation-raised');
  if (level(interpretation, 'ferritin') === 'high' || isAbove(interpretation, 'ferritin'))
    reasons.push('ferritin-raised');
  const flags = interpretation.flags.map((raisedFlag) => raisedFlag.flag);
  const byPattern =
    looksLike(interpretation, 'raised-ferritin-normal-tsat', 'raised-tsat-and-ferritin') ||
    flags.includes('ferritin-above-referral-limit') ||
    flags.includes('anaemia-with-high-tsat');
  if (byPattern && reasons.length === 0) reasons.push('pattern-forbids-iron');
  return reasons;
}

function raiseUnless({ interpretation, person }: Case): Found {
  if (person.has('thalassaemia-trait') || person.flagged('thalassaemia'))
    return found('general', ['thalassaemia-recorded']);
  if (looksLike(interpretation, 'high-haemoglobin')) return found('general', ['haemoglobin-high']);
  if (person.flagged('recent-iron-injection')) return found('general', ['recent-iron-injection']);
  return found('raise-iron', ['low-iron-pattern']);
}

function plainly({ interpretation }: Case): ModeReason {
  if (looksLike(interpretation, ...inflamed)) return 'inflammation-without-low-stores';
  return looksLike(interpretation, 'unclear') ? 'not-enough-known' : 'no-low-iron-pattern';
}

function level(interpretation: Interpretation, analyte: Analyte): string {
  return (
    interpretation.results.find((result) => result.analyte === analyte)?.level ?? 'not-measured'
  );
}

function isAbove(interpretation: Interpretation, analyte: Analyte): boolean {
  const result = interpretation.results.find((candidate) => candidate.analyte === analyte);
  return result?.position === 'a-little-above' || result?.position === 'well-above';
}

function found(mode: FoodMode, codes: readonly ModeReason[]): Found {
  return { mode, why: codes.map((code) => reason(code)) };
}

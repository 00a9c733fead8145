// In: readings, panels, context. Out: the hold tier with every reason, most pressing first.
import { type HoldRow, holdRules, signs } from '../knowledge/follow-up.js';
import { limit } from '../knowledge/limit.js';
import type { Panel, Quantity } from '../report/report.js';
import { type HoldTier, holdTiers } from '../terms.js';
import { saturationFrom } from './derive.js';
import { contradictions } from './facts.js';
import { fallOfHaemoglobin } from './fall.js';
import { severityOf } from './haemoglobin.js';
import type { Hold, Reason } from './interpretation.js';
import { above, below, perCent } from './measure.js';
import { bowelPathway } from './pathway.js';
import type { Person } from './person.js';
import type { Reading } from './reading.js';

type Held = Reason & { readonly tier: HoldTier };

/**
 * The tier is the most pressing of all reasons, over every reading that is still open; 'routine' without one.
 * Alarms are raised at face value: a doubtful haemoglobin of 45 g/L is asked about today, not mailed.
 * Rows: src/knowledge/hold-rules.json and hold-limits.json.
 * @example holdFor([reading], panel, []).tier // 'emergency' with haemoglobin 65 g/L
 */
export function holdFor(
  readings: readonly Reading[],
  panel: Panel,
  previous: readonly Panel[],
): Hold {
  const held = readings.flatMap((reading) => [
    ...valueReasons(reading.person),
    ...severeReasons(reading.person),
    ...bodyReasons(reading),
    ...patternReasons(reading),
  ]);
  const all = [...held, ...fallReasons(panel, previous), ...laboratoryReasons(panel)];
  const once = all.filter((one, at) => all.findIndex((other) => sameReason(one, other)) === at);
  const reasons = once.sort((one, other) => rank(other.tier) - rank(one.tier));
  return { tier: reasons[0]?.tier ?? 'routine', reasons };
}

/** A letter for a child younger than 6 months, for whom no limit is published, waits for a clinician. */
export const holdWithoutGroup: Hold = {
  tier: 'same-day',
  reasons: [{ code: 'under-six-months', tier: 'same-day', facts: {}, rules: ['youngest-months'] }],
};

function rank(tier: HoldTier): number {
  return holdTiers.indexOf(tier);
}

function sameReason(one: Held, other: Held): boolean {
  return one.code === other.code && JSON.stringify(one.facts) === JSON.stringify(other.facts);
}

function valueReasons(person: Person): readonly Held[] {
  return holdRules.flatMap((row) => {
    const quantity = faceValue(person, row.analyte);
    if (quantity === null || !meant(row, person)) return [];
    const answer = row.side === 'below' ? below(quantity, row.value) : above(quantity, row.value);
    if (answer !== 'yes') return [];
    const value = Math.round(quantity.value * 100) / 100;
    const facts = { analyte: row.analyte, value, unit: quantity.unit, limit: row.value };
    return [{ code: row.code, tier: row.tier, facts, rules: [row.id] }];
  });
}

function meant({ sex, kinds, needs }: HoldRow, { group, context }: Person): boolean {
  const has = (id: string) => signs(id).symptoms.some((one) => context.symptoms.includes(one));
  if (!kinds.includes(group.kind) || (sex !== 'any' && sex !== group.sex)) return false;
  switch (needs) {
    case 'nothing':
      return true;
    case 'danger-symptom':
      return has('sign-danger');
    case 'clot-symptom':
      return has('sign-clot');
    case 'fever':
      return context.symptoms.includes('fever');
  }
}

function faceValue(person: Person, analyte: HoldRow['analyte']): Quantity | null {
  const result = person.all.get(analyte);
  if (result !== undefined) return result.quantity;
  if (analyte !== 'transferrin-saturation') return null;
  const face = new Map([...person.all].filter(([, { doubt }]) => doubt?.kind !== 'unit'));
  const found = saturationFrom(face);
  return found?.kind === 'computed' ? perCent(found.value) : null;
}

/** Under WHO's severe line a child or a pregnant woman is not left waiting. */
function severeReasons(person: Person): readonly Held[] {
  const haemoglobin = person.all.get('haemoglobin')?.quantity;
  const { kind } = person.group;
  if (haemoglobin === undefined || (kind !== 'child' && kind !== 'pregnant')) return [];
  const found = severityOf(person, haemoglobin);
  if (found?.severity !== 'severe') return [];
  const { value, unit } = haemoglobin;
  const facts = { value, unit, limit: found.line.value, group: person.group.slug };
  const rules = [found.line.row.id];
  return [{ code: 'haemoglobin-below-severe-line', tier: 'emergency', facts, rules }];
}

function bodyReasons({ person, read }: Reading): readonly Held[] {
  const anaemic = read.levels.haemoglobin === 'low';
  const unwell = present('sign-pregnant-unwell', person)[0];
  return [
    ...present('sign-active-bleeding', person).map(
      (sign): Held => ({ ...sign, code: 'active-bleeding', tier: 'emergency' }),
    ),
    ...present('sign-danger', person).map(
      (sign): Held => ({ ...sign, code: 'danger-symptom', tier: 'same-day' }),
    ),
    ...(anaemic ? present('sign-anaemia-unwell', person) : []).map(
      (sign): Held => ({ ...sign, code: 'anaemia-with-jaundice-or-fever', tier: 'same-day' }),
    ),
    ...(person.group.kind === 'pregnant' && unwell !== undefined
      ? [{ ...unwell, code: 'pregnant-and-unwell', tier: 'same-day' } as const]
      : []),
  ];
}

/** The signs of a row that this person has, each with the row behind it. */
function present(id: string, { context }: Person): readonly Omit<Reason, 'code'>[] {
  const row = signs(id);
  const symptoms = context.symptoms.filter((one) => row.symptoms.includes(one));
  const bleedings = context.bleeding.filter((one) => row.bleedings.includes(one));
  return [
    ...bleedings.map((bleeding) => ({ facts: { bleeding }, rules: [row.id] })),
    ...symptoms.map((symptom) => ({ facts: { symptom }, rules: [row.id] })),
  ];
}

function patternReasons(reading: Reading): readonly Held[] {
  const { person, read, decision } = reading;
  const clashes = contradictions(person, false);
  const discordant =
    clashes.length === 0 && decision.row.pattern === 'discordant-or-implausible'
      ? [{ facts: {}, rules: [decision.row.id] }]
      : clashes;
  const overload = read.saturation?.level === 'high' && read.ferritin?.level === 'high';
  return [
    ...discordant.map(
      ({ facts, rules }): Held => ({ code: 'values-contradict', tier: 'same-day', facts, rules }),
    ),
    ...(overload
      ? [
          {
            code: 'raised-saturation-and-ferritin',
            tier: 'referral',
            facts: {},
            rules: [...(read.saturation?.rules ?? []), ...(read.ferritin?.rules ?? [])],
          } as const,
        ]
      : []),
    ...bowelPathway(reading).map((reason): Held => ({ ...reason, tier: 'referral' })),
  ];
}

function fallReasons(panel: Panel, previous: readonly Panel[]): readonly Held[] {
  const row = limit('fall-same-day');
  const fall = fallOfHaemoglobin(panel, previous);
  if (fall === null || fall.from - fall.to < row.value) return [];
  const facts = { from: fall.from, to: fall.to, collected: fall.collected };
  return [{ code: 'haemoglobin-fell', tier: 'same-day', facts, rules: [row.id, ...fall.rules] }];
}

/** HL7 table 0078: LL, HH and AA call for action now; LU and HU are strong without being critical. */
function laboratoryReasons(panel: Panel): readonly Held[] {
  const marks = [
    ['sign-laboratory-panic', 'laboratory-panic-flag', 'same-day'],
    ['sign-laboratory-strong', 'laboratory-strong-flag', 'referral'],
  ] as const;
  return panel.results.flatMap(({ analyte, labFlag }) =>
    marks.flatMap(([id, code, tier]): readonly Held[] =>
      signs(id)
        .marks.filter((mark) => mark === labFlag)
        .map((flag) => ({ code, tier, facts: { analyte, flag }, rules: [id] })),
    ),
  );
}

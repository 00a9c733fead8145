// In: a reading. Out: flags of the person: stage of life, diseases, medicines, altitude, smoking.
import { limit } from '../../knowledge/limit.js';
import type { Condition, Flag } from '../../terms.js';
import { diseaseFindings } from '../disease.js';
import type { FlagRaised } from '../interpretation.js';
import type { Reading } from '../reading.js';
import { raise } from './raise.js';

const ofCondition: readonly (readonly [Flag, readonly Condition[]])[] = [
  ['kidney-disease', ['kidney-disease', 'kidney-disease-dialysis']],
  ['heart-failure', ['heart-failure']],
  ['bowel-disease', ['inflammatory-bowel-disease', 'coeliac-disease']],
  ['liver-disease', ['liver-disease']],
  ['alcohol', ['alcohol-related']],
  ['thalassaemia', ['thalassaemia-major', 'thalassaemia-trait']],
  ['iron-overload-known', ['haemochromatosis', 'iron-overload']],
];

/** Flags of the person. */
export function personFlags(reading: Reading): readonly FlagRaised[] {
  return [...stageFlags(reading), ...diseaseFlags(reading), ...adjustmentFlags(reading)];
}

function stageFlags({ person }: Reading): readonly FlagRaised[] {
  const { patient, group } = person;
  const [child, over65, birth] = [
    limit('child-until'),
    limit('over-65-from'),
    limit('after-birth-until'),
  ];
  const { ageMonths } = patient;
  const weeks = patient.pregnancy?.weeks ?? null;
  return [
    ...(patient.pregnancy === null
      ? []
      : [
          raise('pregnancy', {
            facts: { group: group.slug, ...(weeks === null ? {} : { weeks }) },
          }),
        ]),
    ...(group.kind === 'after-birth'
      ? [
          raise('after-birth', {
            facts: { weeks: patient.afterBirthWeeks ?? 0 },
            rules: [birth.id],
          }),
        ]
      : []),
    ...(ageMonths !== null && ageMonths < child.value
      ? [raise('child', { facts: { months: ageMonths }, rules: [child.id] })]
      : []),
    ...((ageMonths ?? 0) >= over65.value ? [raise('over-65', { rules: [over65.id] })] : []),
    ...(patient.sex === 'unknown' ? [raise('sex-unknown')] : []),
    ...(ageMonths === null ? [raise('age-unknown')] : []),
  ];
}

function diseaseFlags(reading: Reading): readonly FlagRaised[] {
  const { patient } = reading.person;
  const findings = diseaseFindings(reading.person, reading.results);
  const diseases = ofCondition.flatMap(([flag, conditions]) => {
    const had = conditions.filter((one) => patient.conditions.includes(one));
    if (had.length === 0) return [];
    const own = findings.filter(({ condition }) => had.includes(condition));
    const met = own.some((one) => one.met) ? 'yes' : 'no';
    const facts = { conditions: had.join(' '), ...(own.length === 0 ? {} : { 'rule-met': met }) };
    const rules = own.flatMap((one) => one.rules);
    return [raise(flag, { facts, rules })];
  });
  const taken = patient.medicines.filter(
    (one) => one.startsWith('iron-') && one !== 'iron-chelator',
  );
  const taking =
    taken.length === 0 ? [] : [raise('taking-iron', { facts: { medicines: taken.join(' ') } })];
  return [...diseases, ...taking];
}

function adjustmentFlags({ person }: Reading): readonly FlagRaised[] {
  const { altitude, smoking } = person.adjustment;
  const metres = person.patient.altitudeMetres ?? 0;
  const analyte = 'haemoglobin' as const;
  const high =
    altitude.add === 0
      ? []
      : [
          raise('altitude-adjusted', {
            analyte,
            facts: { metres, added: altitude.add ?? 'beyond-the-table' },
            rules: altitude.rules,
          }),
        ];
  const smoke =
    smoking.add === 0
      ? []
      : [
          raise('smoking-adjusted', {
            analyte,
            facts: { added: smoking.add },
            rules: smoking.rules,
          }),
        ];
  return [...high, ...smoke];
}

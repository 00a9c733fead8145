// In: a reading. Out: whether a bowel check pathway applies, and every other pathway for the clinician.
import { pathway } from '../knowledge/follow-up.js';
import { limit } from '../knowledge/limit.js';
import type { Pattern } from '../terms.js';
import type { Reason } from './interpretation.js';
import { above, below } from './measure.js';
import type { Person } from './person.js';
import type { Reading } from './reading.js';

const deficiencyAnaemia: readonly Pattern[] = [
  'iron-deficiency-anaemia',
  'mixed-inflammation-and-iron-deficiency',
];

/** Anaemia with iron deficiency as the main pattern or a second statement. */
function hasDeficiencyAnaemia({ decision }: Reading): boolean {
  return [decision.row, ...decision.companions].some(({ pattern }) =>
    deficiencyAnaemia.includes(pattern),
  );
}

/**
 * Why the bowel should be checked: deficiency anaemia in a man or after the menopause, anaemia from 60 years, bowel signs.
 * Sources: NICE NG12 as changed in 2023 / DG56, BSG 2021, AGA 2020.
 * @example bowelPathway(manOf62WithDeficiencyAnaemia)[0]?.code // 'bowel-check-pathway'
 */
export function bowelPathway(reading: Reading): readonly Reason[] {
  const { person } = reading;
  if (!isAdult(person)) return [];
  const reasons: Reason[] = [];
  const add = (why: string, ...rules: readonly string[]) =>
    reasons.push({ code: 'bowel-check-pathway', facts: { why }, rules });
  if (hasDeficiencyAnaemia(reading) && !mayMenstruate(person))
    add('iron-deficiency-anaemia', 'pathway-stool-test-ida', 'pathway-endoscopy');
  const older = pathway('pathway-stool-test-older');
  if (reading.read.levels.haemoglobin === 'low' && atLeast(person, older.value))
    add('older-anaemia', older.id);
  for (const id of bowelSigns(person)) add('bowel-signs', id);
  return reasons;
}

function bowelSigns({ context, ...person }: Person): readonly string[] {
  const has = (symptom: (typeof context.symptoms)[number]) => context.symptoms.includes(symptom);
  const weight = pathway('pathway-stool-test-weight-loss');
  const losing =
    has('weight-loss') && has('abdominal-pain') && atLeast({ context, ...person }, weight.value);
  return [
    ...(has('change-in-bowel-habit') ? ['pathway-stool-test-signs'] : []),
    ...(losing ? [weight.id] : []),
  ];
}

function isAdult({ group }: Person): boolean {
  return group.kind === 'adult';
}

function atLeast({ patient }: Person, years: number | null): boolean {
  return (patient.ageMonths ?? 0) >= (years ?? Number.NaN) * 12;
}

/** Told, or, when nothing is told, younger than the age from which the question is open. */
function mayMenstruate({ group, patient }: Person): boolean {
  if (group.sex !== 'female') return false;
  if (patient.menstruating !== null) return patient.menstruating;
  const from = limit('menopause-asked-from');
  return (patient.ageMonths ?? 0) < from.value * 12;
}

type Note = readonly [applies: boolean, rule: string, facts?: Reason['facts']];

/** Pathways as codes with their rows: for the clinician's sheet, never the letter. */
export function pathwayNotes(reading: Reading): readonly Reason[] {
  const { person, read, decision } = reading;
  const { levels } = read;
  const ida = hasDeficiencyAnaemia(reading);
  const adult = isAdult(person);
  const statements = [decision.row, ...decision.companions].map(({ pattern }) => pattern);
  const bowel = bowelPathway(reading).map(({ facts }) => facts.why);
  const notes: readonly Note[] = [
    [ida && adult, 'pathway-stool-test-ida'],
    [bowel.includes('older-anaemia') && !ida, 'pathway-stool-test-older'],
    ...bowelSigns(person).map((id): Note => [adult, id]),
    [ida && adult && !mayMenstruate(person), 'pathway-endoscopy'],
    [ida && adult && mayMenstruate(person), 'pathway-endoscopy-consider'],
    [ida, 'pathway-coeliac'],
    ...pregnancyNotes(person, ida),
    [read.saturation?.level === 'high', 'pathway-fasting'],
    ...overloadNotes(reading),
    [statements.includes('raised-ferritin-normal-tsat'), 'pathway-raised-ferritin'],
    [statements.includes('microcytosis-with-normal-iron'), 'pathway-thalassaemia'],
    [levels.haemoglobin === 'high', 'pathway-polycythaemia'],
  ];
  return notes
    .filter(([applies]) => applies)
    .map(([, id, facts = {}]) => {
      const row = pathway(id);
      return { code: row.code, facts, rules: [row.id] };
    });
}

function pregnancyNotes(person: Person, ida: boolean): readonly Note[] {
  const { pregnancy } = person.patient;
  if (pregnancy === null || !ida) return [];
  const [birth, vein] = [pathway('pathway-pregnancy-birth'), pathway('pathway-pregnancy-vein')];
  // Stryker disable OptionalChaining,ConditionalExpression,ArrayDeclaration: whoever has deficiency anaemia has a haemoglobin.
  const haemoglobin = person.sure.get('haemoglobin')?.quantity;
  if (haemoglobin === undefined) return [];
  // Stryker restore all
  const under = below(haemoglobin, birth.value ?? Number.NaN) === 'yes';
  const late = (pregnancy.weeks ?? 0) > (vein.value ?? Number.NaN);
  return [
    [under, birth.id],
    [under && late, vein.id],
    [true, 'pathway-pregnancy-recheck'],
  ];
}

function overloadNotes({ person, read }: Reading): readonly Note[] {
  const ferritin = person.sure.get('ferritin')?.quantity;
  if (ferritin === undefined) return [];
  const gene = pathway(
    mayMenstruate(person) ? 'pathway-haemochromatosis-women' : 'pathway-haemochromatosis-men',
  );
  const liver = pathway('pathway-liver');
  const over = (value: number | null) => above(ferritin, value ?? Number.NaN) === 'yes';
  const raised = read.saturation?.level === 'high';
  return [
    [raised && over(gene.value) && isAdult(person), gene.id],
    [raised && over(liver.value), liver.id],
  ];
}

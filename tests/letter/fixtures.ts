// Invented people of an invented clinic, one for every pattern: what a letter is composed from in these tests.
import { readFileSync } from 'node:fs';
import type { Advice, FoodChoice, FoodMode, PlannedStep } from '../../src/advise/advice.js';
import type { GradedResult, Interpretation } from '../../src/interpret/interpretation.js';
import type { Clinic } from '../../src/letter/clinic.js';
import { type Language, type LetterInput, readLanguage } from '../../src/letter/index.js';
import type { Patient, Report } from '../../src/report/report.js';
import type { Analyte, Flag, HoldTier, Level, Pattern, Position } from '../../src/terms.js';

const json = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));

export const englishFiles = (): Record<string, unknown> => ({
  meta: json('locales/en/meta.json'),
  letter: json('locales/en/letter.json'),
  foods: json('locales/en/foods.json'),
  fridge: json('locales/en/fridge.json'),
  'easy-read': json('locales/en/easy-read.json'),
  spoken: json('locales/en/spoken.json'),
  reasoning: json('locales/en/reasoning.json'),
});

function readEnglish(): Language {
  const read = readLanguage('en', englishFiles());
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  return read.value;
}
export const english: Language = readEnglish();

export const clinic: Clinic = {
  name: 'Saltmarsh Bay Health Centre',
  addressLines: ['3 Quay Lane', 'Saltmarsh Bay'],
  phone: '555-0142',
  hours: 'Monday to Friday, 8 am to 6 pm',
  emergencyNumber: '555-0199',
  maternityPhone: '555-0117',
  outOfHours: null,
  interpreter: { phone: '555-0163', free: true },
  website: null,
  demo: true,
};

const place = { file: 'invented.json', row: null, field: null };

const adult: Patient = {
  id: 'SB-2001',
  name: 'Noor Castellane',
  birthDate: '1991-01-30',
  ageMonths: 429,
  sex: 'female',
  pregnancy: null,
  afterBirthWeeks: null,
  menstruating: true,
  altitudeMetres: null,
  cigarettesPerDay: null,
  diet: null,
  conditions: [],
  medicines: [],
};

type Graded = readonly [Analyte, string, string, string | null, Position | null, Level];

export function graded([analyte, value, unit, interval, position, level]: Graded): GradedResult {
  const number = (text: string) => Number(text.trim().replace(/^[<>]/, '').replace(',', '.'));
  const ends = interval?.split(/[-–]/).map(number) ?? [];
  const [low = null, high = null] = ends;
  return {
    analyte,
    value: number(value),
    unit,
    comparator: /^[<>]/.exec(value)?.[0] ?? null,
    copied: { value, unit, interval },
    derived: null,
    position,
    comparedWith:
      position === null
        ? null
        : { by: 'laboratory', low, high, source: 'report', rule: null, highRule: null, position },
    also: [],
    level,
    labFlag: null,
    doubt: null,
  };
}

const usual: readonly Graded[] = [
  ['haemoglobin', '134', 'g/L', '115-155', 'in-range', 'usual'],
  ['ferritin', '62', 'ug/L', '20-500', 'in-range', 'usual'],
  ['transferrin-saturation', '31', '%', '16-50', 'in-range', 'usual'],
  ['serum-iron', '17', 'umol/L', '10-30', 'in-range', 'usual'],
  ['transferrin', '2.4', 'g/L', '2.0-3.5', 'in-range', 'usual'],
  ['mcv', '88', 'fL', '80-100', 'in-range', 'usual'],
];

const changed: Readonly<Record<Pattern, readonly Graded[]>> = {
  'all-in-range': [],
  'early-low-intake': [['ferritin', '22', 'ug/L', '20-500', 'in-range', 'low']],
  'iron-deficiency-without-anaemia': [
    ['ferritin', '9', 'ug/L', '20-500', 'well-below', 'low'],
    ['transferrin-saturation', '13', '%', '16-50', 'a-little-below', 'low'],
  ],
  'iron-deficient-erythropoiesis': [
    ['ferritin', '11', 'ug/L', '20-500', 'well-below', 'low'],
    ['transferrin-saturation', '9', '%', '16-50', 'well-below', 'low'],
    ['serum-iron', '6', 'umol/L', '10-30', 'well-below', 'low'],
    ['transferrin', '3.7', 'g/L', '2.0-3.5', 'a-little-above', 'high'],
  ],
  'iron-deficiency-anaemia': [
    ['haemoglobin', '104', 'g/L', '115-155', 'a-little-below', 'low'],
    ['ferritin', '4', 'ug/L', '20-500', 'well-below', 'low'],
    ['transferrin-saturation', '6', '%', '16-50', 'well-below', 'low'],
    ['serum-iron', '5', 'umol/L', '10-30', 'well-below', 'low'],
    ['transferrin', '3.6', 'g/L', '2.0-3.5', 'a-little-above', 'high'],
    ['mcv', '74', 'fL', '80-100', 'a-little-below', 'low'],
  ],
  'anaemia-of-inflammation': [
    ['haemoglobin', '103', 'g/L', '115-155', 'a-little-below', 'low'],
    ['ferritin', '260', 'ug/L', '20-500', 'in-range', 'usual'],
    ['serum-iron', '6', 'umol/L', '10-30', 'well-below', 'low'],
    ['crp', '48', 'mg/L', '0-5', 'well-above', 'high'],
  ],
  'mixed-inflammation-and-iron-deficiency': [
    ['haemoglobin', '98', 'g/L', '115-155', 'well-below', 'low'],
    ['ferritin', '48', 'ug/L', '20-500', 'in-range', 'low'],
    ['crp', '30', 'mg/L', '0-5', 'well-above', 'high'],
  ],
  'possible-recent-blood-loss': [['haemoglobin', '96', 'g/L', '115-155', 'well-below', 'low']],
  'microcytosis-with-normal-iron': [['mcv', '68', 'fL', '80-100', 'well-below', 'low']],
  'raised-ferritin-normal-tsat': [['ferritin', '640', 'ug/L', '20-500', 'a-little-above', 'high']],
  'raised-tsat-and-ferritin': [
    ['ferritin', '890', 'ug/L', '20-500', 'well-above', 'high'],
    ['transferrin-saturation', '72', '%', '16-50', 'well-above', 'high'],
    ['serum-iron', '38', 'umol/L', '10-30', 'a-little-above', 'high'],
  ],
  'anaemia-not-explained-by-iron': [
    ['haemoglobin', '106', 'g/L', '115-155', 'a-little-below', 'low'],
  ],
  'high-haemoglobin': [['haemoglobin', '171', 'g/L', '115-155', 'a-little-above', 'high']],
  'post-iron-dose-artefact': [['serum-iron', '48', 'umol/L', '10-30', 'well-above', 'high']],
  'discordant-or-implausible': [['ferritin', '640', 'ug/L', '20-500', 'a-little-above', 'high']],
  unclear: [],
};

const lowPatterns: readonly Pattern[] = [
  'early-low-intake',
  'iron-deficiency-without-anaemia',
  'iron-deficient-erythropoiesis',
  'iron-deficiency-anaemia',
  'mixed-inflammation-and-iron-deficiency',
];

export type Wanted = {
  readonly pattern: Pattern;
  readonly patient?: Partial<Patient>;
  readonly tier?: HoldTier;
  readonly flags?: readonly Flag[];
  readonly results?: readonly GradedResult[];
  readonly advice?: Partial<Advice>;
  readonly clinic?: Partial<Clinic>;
  readonly options?: Partial<LetterInput['options']>;
  readonly language?: Language;
};

/** A whole input for one letter, every part of it overridable. */
export function letterOf(wanted: Wanted): LetterInput {
  const { pattern } = wanted;
  const results = wanted.results ?? resultsOf(pattern);
  const patient = { ...adult, ...wanted.patient };
  return {
    report: reportOf(patient),
    interpretation: interpretationOf(
      pattern,
      results,
      wanted.tier ?? 'routine',
      wanted.flags ?? [],
    ),
    advice: { ...adviceOf(pattern), ...wanted.advice },
    clinic: { ...clinic, ...wanted.clinic },
    language: wanted.language ?? english,
    options: {
      analogy: 'shirt-shop',
      checkedBy: null,
      date: '2026-11-20',
      easyRead: false,
      ...wanted.options,
    },
  };
}

export function resultsOf(pattern: Pattern): readonly GradedResult[] {
  const own = changed[pattern];
  const kept = usual.filter(([analyte]) => !own.some(([other]) => other === analyte));
  const order = [...own, ...kept].sort((one, other) => rank(one[0]) - rank(other[0]));
  return order.map(graded);
}

const ranks: readonly Analyte[] = usual.map(([analyte]) => analyte);
const rank = (analyte: Analyte) => (ranks.includes(analyte) ? ranks.indexOf(analyte) : 99);

function reportOf(patient: Patient): Report {
  return {
    place,
    patient,
    panel: { collected: '2026-11-16', results: [] },
    context: {
      symptoms: [],
      bleeding: [],
      ironTabletHoursBefore: null,
      ironInjectionDaysBefore: null,
      transfusionDaysBefore: null,
      fasting: null,
      sampleTime: null,
      notes: [],
    },
    previous: [],
  };
}

function interpretationOf(
  pattern: Pattern,
  results: readonly GradedResult[],
  tier: HoldTier,
  flags: readonly Flag[],
): Interpretation {
  return {
    collected: '2026-11-16',
    groups: [],
    results,
    pattern: { main: pattern, companions: [], supports: [], against: [], missing: [] },
    flags: flags.map((flag) => ({ flag, analyte: null, facts: {}, rules: [] })),
    hold: { tier, reasons: [] },
    changes: [],
    nearMisses: [],
    clinicianNotes: [],
    sources: [],
  };
}

export const food = (
  id: string,
  haem: boolean,
  vitaminC = false,
  kind = haem ? 'red-meat' : 'pulse',
): FoodChoice => ({
  food: id,
  kind,
  haem,
  vitaminC,
  lowCost: true,
  amount: { size: 'some' },
  portionGrams: 100,
  cautions: [],
  why: [],
});

const step = (
  name: PlannedStep['step'],
  who: PlannedStep['who'],
  by: string | null = '2026-12-04',
): PlannedStep => ({ step: name, who, by, suggested: true, rules: [], words: null });

function adviceOf(pattern: Pattern): Advice {
  const low = lowPatterns.includes(pattern);
  const mode: FoodMode = low ? 'raise-iron' : pattern === 'all-in-range' ? 'general' : 'none';
  return {
    food: {
      mode: pattern === 'raised-tsat-and-ferritin' ? 'hold-back' : mode,
      why: [],
      choices: low
        ? [
            food('beef-mince', true),
            food('sardines-tin', true),
            food('lentils-red', false),
            food('wheat-biscuits', false),
          ]
        : [],
      partners: low ? [food('orange', false, true)] : [],
      swaps: low
        ? [
            { swap: 'tea-between-meals', size: 'can-lose-half-or-more', rules: [] },
            { swap: 'vitamin-c-with-plant-meal', size: 'can-nearly-double', rules: [] },
          ]
        : [],
      cautions:
        pattern === 'raised-tsat-and-ferritin'
          ? ['no-iron-or-vitamin-c-tablets', 'no-raw-shellfish', 'little-or-no-alcohol']
          : low
            ? ['food-alone-is-not-enough']
            : [],
      answers: [],
      leftOut: [],
      askDietitian: false,
    },
    tablets: null,
    steps:
      pattern === 'all-in-range'
        ? [step('no-further-test', 'patient', null)]
        : [step('talk-at-clinic', 'patient'), step('further-tests', 'clinic')],
    heardBy: '2026-12-11',
    help: [
      { sign: 'chest-pain', urgency: 'emergency' },
      { sign: 'fainting', urgency: 'emergency' },
      { sign: 'breathless-at-rest', urgency: 'emergency' },
      { sign: 'bleeding-will-not-stop', urgency: 'emergency' },
      { sign: 'black-or-bloody-stool', urgency: 'today' },
      { sign: 'feeling-worse', urgency: 'soon' },
    ],
    cautions: [
      'cause-not-known',
      'no-iron-tablets-on-your-own',
      'do-not-stop-medicines',
      'show-this-letter',
      'for-this-person-only',
    ],
    staff: [],
    sources: [],
  };
}

// In: a few facts in short form. Out: a whole report for tests, every other fact absent.
import { canonicalUnit } from '../../src/report/index.js';
import type {
  Comparator,
  Context,
  Doubt,
  LabFlag,
  Panel,
  Patient,
  Report,
  Result,
} from '../../src/report/report.js';
import { type Analyte, analytes } from '../../src/terms.js';

export type Given =
  | number
  | {
      readonly value: number;
      readonly low?: number;
      readonly high?: number;
      readonly comparator?: Comparator;
      readonly labFlag?: LabFlag;
      readonly doubt?: Doubt['kind'];
      readonly preliminary?: boolean;
    };

export type Values = Readonly<Partial<Record<Analyte, Given>>>;

/** Deficiency anaemia as plain as it gets; no inflammation. */
export const deficient: Values = {
  haemoglobin: 100,
  ferritin: 6,
  'transferrin-saturation': 8,
  'serum-iron': 6,
  transferrin: 4,
  mcv: 72,
  crp: 1,
};

const nowhere = { file: null, row: null, field: null };

export const today = '2026-11-25';

function patientOf(facts: Partial<Patient> = {}): Patient {
  return {
    id: null,
    name: null,
    birthDate: null,
    ageMonths: 40 * 12,
    sex: 'male',
    pregnancy: null,
    afterBirthWeeks: null,
    menstruating: null,
    altitudeMetres: null,
    cigarettesPerDay: null,
    diet: null,
    conditions: [],
    medicines: [],
    ...facts,
  };
}

function contextOf(facts: Partial<Context> = {}): Context {
  return {
    symptoms: [],
    bleeding: [],
    ironTabletHoursBefore: null,
    ironInjectionDaysBefore: null,
    transfusionDaysBefore: null,
    fasting: null,
    sampleTime: null,
    notes: [],
    ...facts,
  };
}

function resultOf(analyte: Analyte, given: Given): Result {
  const one = typeof given === 'number' ? { value: given } : given;
  const { low = null, high = null } = one;
  const unit = canonicalUnit(analyte);
  const interval = low === null && high === null ? null : { low, high };
  return {
    place: nowhere,
    analyte,
    quantity: { value: one.value, unit, comparator: one.comparator ?? null },
    interval,
    copied: {
      value: `${one.comparator ?? ''}${one.value}`,
      unit,
      interval: interval === null ? null : `${low ?? ''}-${high ?? ''}`,
    },
    labFlag: one.labFlag ?? null,
    preliminary: one.preliminary ?? false,
    doubt:
      one.doubt === undefined
        ? null
        : {
            kind: one.doubt,
            rule: `limits-${analyte}`,
            question: 'is it right?',
            likelyUnit: null,
          },
  };
}

export function panelOf(values: Values, collected = '2026-11-16'): Panel {
  const results = analytes.flatMap((analyte) => {
    const given = values[analyte];
    return given === undefined ? [] : [resultOf(analyte, given)];
  });
  return { collected, results };
}

/**
 * A report of a man of 40 unless told otherwise.
 * @example reportOf({ haemoglobin: 100, ferritin: 5 }, { patient: { sex: 'female' } })
 */
export function reportOf(
  values: Values,
  {
    patient = {},
    context = {},
    previous = [],
    collected = '2026-11-16',
  }: {
    readonly patient?: Partial<Patient>;
    readonly context?: Partial<Context>;
    readonly previous?: readonly Panel[];
    readonly collected?: string;
  } = {},
): Report {
  return {
    place: nowhere,
    patient: patientOf(patient),
    panel: panelOf(values, collected),
    context: contextOf(context),
    previous,
  };
}

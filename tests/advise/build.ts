// A few facts arrive; a whole report and interpretation leave, so that each test says only what matters to it.
import type { Advice, Choices } from '../../src/advise/advice.js';
import { advise } from '../../src/advise/index.js';
import type {
  FlagRaised,
  GradedResult,
  Interpretation,
} from '../../src/interpret/interpretation.js';
import { nowhere } from '../../src/problem.js';
import type { Context, DietFacts, Patient, Report } from '../../src/report/report.js';
import type { Analyte, Flag, HoldTier, Level, Pattern, Position } from '../../src/terms.js';

export const today = '2026-11-25';
const noChoices: Choices = { steps: null, tabletsPrescribed: null, noFood: false };

type Given = {
  readonly pattern?: Pattern;
  readonly companions?: readonly Pattern[];
  readonly flags?: readonly Flag[];
  readonly tier?: HoldTier;
  readonly results?: readonly GradedResult[];
  readonly patient?: Partial<Patient>;
  readonly diet?: Partial<DietFacts>;
  readonly context?: Partial<Context>;
  readonly choices?: Partial<Choices>;
};

/** A woman of forty with low iron and nothing else recorded, changed by what is given. */
export function buildReport(given: Given = {}): Report {
  const diet: DietFacts = {
    pattern: null,
    avoids: [],
    lowCost: false,
    fastingMonth: false,
    cuisines: [],
    ...given.diet,
  };
  return {
    place: nowhere,
    patient: {
      id: null,
      name: null,
      birthDate: null,
      ageMonths: 480,
      sex: 'female',
      pregnancy: null,
      afterBirthWeeks: null,
      menstruating: null,
      altitudeMetres: null,
      cigarettesPerDay: null,
      diet: given.diet === undefined ? null : diet,
      conditions: [],
      medicines: [],
      ...given.patient,
    },
    panel: { collected: '2026-11-20', results: [] },
    context: {
      symptoms: [],
      bleeding: [],
      ironTabletHoursBefore: null,
      ironInjectionDaysBefore: null,
      transfusionDaysBefore: null,
      fasting: null,
      sampleTime: null,
      notes: [],
      ...given.context,
    },
    previous: [],
  };
}

function buildInterpretation(given: Given = {}): Interpretation {
  const flags: readonly FlagRaised[] = (given.flags ?? []).map((flag) => ({
    flag,
    analyte: null,
    facts: {},
    rules: [],
  }));
  return {
    collected: '2026-11-20',
    groups: [],
    results: given.results ?? [],
    pattern: {
      main: given.pattern ?? 'iron-deficiency-anaemia',
      companions: given.companions ?? [],
      supports: [],
      against: [],
      missing: [],
    },
    flags,
    hold: { tier: given.tier ?? 'routine', reasons: [] },
    changes: [],
    nearMisses: [],
    clinicianNotes: [],
    sources: [],
  };
}

/** One graded result; the unit is ours for the analyte where a test needs none of its own. */
export function graded(
  analyte: Analyte,
  value: number,
  level: Level,
  more: Partial<GradedResult> = {},
): GradedResult {
  const unit = analyte === 'ferritin' ? 'ug/L' : '%';
  return {
    analyte,
    value,
    unit,
    comparator: null,
    copied: { value: String(value), unit, interval: null },
    derived: null,
    position: positionOf[level],
    comparedWith: null,
    also: [],
    level,
    labFlag: null,
    doubt: null,
    ...more,
  };
}

const positionOf: Readonly<Record<Level, Position | null>> = {
  low: 'a-little-below',
  usual: 'in-range',
  high: 'a-little-above',
  'not-measured': null,
};

/** The advice for a person described by a few facts. */
export function adviceFor(given: Given = {}): Advice {
  const choices = { ...noChoices, ...given.choices };
  return advise(buildReport(given), buildInterpretation(given), choices, today);
}

/** Food ids of an advice, suggested and partners alike. */
export function suggested(advice: Advice): readonly string[] {
  return [...advice.food.choices, ...advice.food.partners].map((choice) => choice.food);
}

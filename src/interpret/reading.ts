// In: a person of one group. Out: one complete reading: graded results, levels, facts, decision, rows used.
import type { TableFact } from '../knowledge/pattern-rules.js';
import type { Panel, Quantity, Result } from '../report/report.js';
import { analytes } from '../terms.js';
import { type Decision, decide } from './decide.js';
import { type Computed, computeSaturation, type NotComputed } from './derive.js';
import { diseaseFindings } from './disease.js';
import { contradictions, recentBleed, recentIron } from './facts.js';
import { graded, type Laid, layBeside } from './grade.js';
import type { GradedResult, Reason } from './interpretation.js';
import { type LevelsRead, readLevels } from './level.js';
import type { Person } from './person.js';
import { perCent } from './measure.js';
import { levelOf } from './position.js';
import { readSaturation } from './saturation.js';
import { printSaturation } from './print-saturation.js';

export type Reading = {
  readonly person: Person;
  readonly results: readonly GradedResult[];
  readonly read: LevelsRead;
  /** What each fact rests on. */
  readonly facts: ReadonlyMap<TableFact, readonly Reason[]>;
  readonly decision: Decision;
  readonly computed: Computed | NotComputed | null;
  readonly rules: readonly string[];
};

/**
 * Reads a panel as one group.
 * @example readAs(person, report.previous, report.panel).decision.row.pattern // 'iron-deficiency-anaemia'
 */
export function readAs(person: Person, previous: readonly Panel[], panel: Panel): Reading {
  const computed = computeSaturation(person);
  const printed = person.sure.get('transferrin-saturation');
  const derivable = person.all.has('transferrin-saturation') ? null : computed;
  const quantity = printed?.quantity ?? (derivable === null ? null : asQuantity(derivable));
  const read = readLevels(person, quantity === null ? null : { quantity });
  const rules: string[] = [];
  const results = panel.results.map((result) => {
    const laid = layBeside(person, result.analyte, result.quantity, result.interval);
    rules.push(...laid.rules);
    return graded(result, laid, resultLevel(result, laid, read));
  });
  if (derivable?.kind === 'computed') {
    const laid = layBeside(person, 'transferrin-saturation', perCent(derivable.value), null);
    rules.push(...laid.rules, ...derivable.rules);
    results.push(derivedResult(person, derivable, laid, read));
  }
  results.sort((one, other) => analytes.indexOf(one.analyte) - analytes.indexOf(other.analyte));
  const facts = gatherFacts(person, previous, panel, results, read);
  const decision = decide({ levels: read.levels, facts: new Set(facts.keys()) });
  return { person, results, read, facts, decision, computed, rules };
}

function asQuantity(computed: Computed | NotComputed): Quantity | null {
  return computed.kind === 'computed' ? perCent(computed.value) : null;
}

/** Four tests have cut-offs of their own; the others are as they lie. */
function resultLevel({ analyte }: Result, laid: Laid, { levels }: LevelsRead) {
  switch (analyte) {
    case 'haemoglobin':
    case 'ferritin':
    case 'transferrin-saturation':
    case 'crp':
      return levels[analyte];
    default:
      return levelOf(laid.position);
  }
}

function derivedResult(
  person: Person,
  computed: Computed,
  laid: Laid,
  read: LevelsRead,
): GradedResult {
  return {
    analyte: 'transferrin-saturation',
    value: computed.value,
    unit: '%',
    comparator: null,
    copied: { value: printSaturation(person, computed.value), unit: '%', interval: null },
    derived: { from: computed.from, rule: computed.rule },
    position: laid.position,
    comparedWith: laid.comparedWith,
    also: laid.also,
    level: read.levels['transferrin-saturation'],
    labFlag: null,
    doubt: null,
  };
}

function gatherFacts(
  person: Person,
  previous: readonly Panel[],
  panel: Panel,
  results: readonly GradedResult[],
  read: LevelsRead,
): ReadonlyMap<TableFact, readonly Reason[]> {
  const disease = diseaseFindings(person, results).filter(({ met }) => met);
  const certain = read.ferritin?.reading === 'ferritin-low' ? [noted('ferritin-low')] : [];
  const outside = results
    .filter(({ position, labFlag }) => position !== 'in-range' || (labFlag ?? 'N') !== 'N')
    .map(({ analyte }) => noted('outside-laboratory-interval-only', { analyte }));
  const found: readonly (readonly [TableFact, readonly Reason[]])[] = [
    ['recent-iron', recentIron(person, read.levels)],
    ['contradiction', contradictions(person)],
    ['bleed', recentBleed(person, previous, panel)],
    ['ferritin-certain', certain],
    ['outside-range', [...outside, ...saturationsClash(person)]],
    [
      'disease-rule',
      disease.map(({ condition, rules }) => ({
        code: 'disease-rule-met',
        facts: { condition },
        rules,
      })),
    ],
  ];
  return new Map(found.filter(([, reasons]) => reasons.length > 0));
}

/** The printed saturation and the computed one say different things. */
function saturationsClash(person: Person): readonly Reason[] {
  const printed = person.sure.get('transferrin-saturation')?.quantity;
  const found = computeSaturation(person);
  if (printed === undefined || found?.kind !== 'computed') return [];
  const computed = readSaturation(person.group, {
    ...printed,
    value: found.value,
    comparator: null,
  });
  const same = readSaturation(person.group, printed).level === computed.level;
  const { value, unit, comparator } = printed;
  const facts = { analyte: 'transferrin-saturation', value, unit };
  return same
    ? []
    : [noted('value-doubtful', comparator === null ? facts : { ...facts, comparator })];
}

function noted(code: string, facts: Reason['facts'] = {}): Reason {
  return { code, facts, rules: [] };
}

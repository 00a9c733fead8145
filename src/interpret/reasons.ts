// In: a reading. Out: what supports its main pattern, what speaks against it, and what is missing.
import { patternProfiles, tableTests } from '../knowledge/pattern-rules.js';
import type { Analyte, Pattern } from '../terms.js';
import { mentzer, stfrIndex } from './index-of-cells.js';
import type { PatternFound, Reason } from './interpretation.js';
import { levelReason, paleCells, reticulocytes, valueFacts } from './level-reason.js';
import type { Reading } from './reading.js';

/**
 * The main pattern with its reasons. Supports and contradictions are read off the pattern's full profile.
 * @example explainPattern(reading).supports[0]?.code // 'haemoglobin-low'
 */
export function explainPattern(reading: Reading): PatternFound {
  const { row, companions } = reading.decision;
  const { supports, against } = weigh(reading, row.pattern);
  return {
    main: row.pattern,
    companions: companions.map(({ pattern }) => pattern),
    supports,
    against,
    missing: missingTests(reading),
  };
}

type Weighed = { readonly supports: readonly Reason[]; readonly against: readonly Reason[] };

function weigh(reading: Reading, main: Pattern): Weighed {
  const profile = patternProfiles.find(({ pattern }) => pattern === main);
  const supports: Reason[] = [...factReasons(reading, main)];
  const against: Reason[] = [];
  for (const test of tableTests) {
    const level = reading.read.levels[test];
    const expected = profile?.when[test];
    const reason = levelReason(reading, test, level);
    if (reason === null) continue;
    if (expected === undefined) {
      if (profile === undefined && level !== 'usual') against.push(reason);
    } else if (expected.includes(level)) supports.push(reason);
    else against.push(reason);
  }
  against.push(...uncertain(reading), ...blockers(reading));
  for (const [side, reason] of hints(reading, main))
    (side === 'for' ? supports : against).push(reason);
  return { supports, against };
}

function factReasons({ facts }: Reading, main: Pattern): readonly Reason[] {
  const bled: readonly Pattern[] = ['possible-recent-blood-loss', 'iron-deficiency-anaemia'];
  switch (main) {
    case 'post-iron-dose-artefact':
      return facts.get('recent-iron') ?? [];
    case 'discordant-or-implausible':
      return facts.get('contradiction') ?? [];
    default:
      return bled.includes(main) ? (facts.get('bleed') ?? []) : [];
  }
}

/** Doubts and open comparators weigh against every statement. */
function uncertain({ results }: Reading): readonly Reason[] {
  return results.flatMap((one) => {
    const facts = valueFacts(one);
    if (one.doubt !== null) return [{ code: 'value-doubtful', facts, rules: [] }];
    const open = one.comparedWith !== null && one.position === null;
    return open ? [{ code: 'comparator-undecided', facts, rules: [] }] : [];
  });
}

/** A disease's own rule weighs against everything; so does what kept quiet results from being called in range. */
function blockers({ facts, read }: Reading): readonly Reason[] {
  const disease = facts.get('disease-rule') ?? [];
  const quiet = tableTests.every((test) => !['low', 'high'].includes(read.levels[test]));
  return quiet ? [...disease, ...(facts.get('outside-range') ?? [])] : disease;
}

const deficiency: readonly Pattern[] = [
  'early-low-intake',
  'iron-deficiency-without-anaemia',
  'iron-deficient-erythropoiesis',
  'iron-deficiency-anaemia',
  'mixed-inflammation-and-iron-deficiency',
];

type Hint = readonly ['for' | 'against', Reason];

/** Extra tests: hints that never decide. */
function hints(reading: Reading, main: Pattern): readonly Hint[] {
  const { person } = reading;
  const deficient = deficiency.includes(main);
  const smallCells = main === 'microcytosis-with-normal-iron';
  const stfr = stfrIndex(person);
  const cells = mentzer(person);
  const young = reticulocytes(reading);
  const side = (agrees: boolean) => (agrees ? 'for' : 'against') as Hint[0];
  const found: Hint[] = [];
  if (stfr !== null && (stfr.high || stfr.low))
    found.push([
      side(stfr.high === deficient),
      {
        code: stfr.high ? 'stfr-index-high' : 'stfr-index-low',
        facts: { value: stfr.value },
        rules: stfr.rules,
      },
    ]);
  if (young !== null)
    found.push([side((young.code === 'reticulocyte-haemoglobin-low') === deficient), young]);
  const pale = paleCells(reading);
  if (pale !== null) found.push([side(deficient || smallCells), pale]);
  if (cells !== null && (deficient || smallCells) && (cells.low || cells.high))
    found.push([
      side(cells.low === smallCells),
      {
        code: cells.low ? 'mentzer-low' : 'mentzer-high',
        facts: { value: cells.value },
        rules: cells.rules,
      },
    ]);
  return found;
}

/** Tests that were not done (or cannot decide) and would settle the pattern. */
function missingTests({ read, person }: Reading): readonly Analyte[] {
  const { levels } = read;
  const asked: readonly (readonly [Analyte, boolean])[] = [
    ['haemoglobin', levels.haemoglobin === 'not-measured'],
    ['ferritin', read.ferritin === null],
    [
      'transferrin-saturation',
      levels['transferrin-saturation'] === 'not-measured' && !read.saturationSetAside,
    ],
    ['mcv', levels.mcv === 'not-measured' && levels.haemoglobin === 'low'],
    ['crp', person.inflammation === 'not-measured' && read.ferritin?.reading !== 'ferritin-low'],
  ];
  return asked.filter(([, missing]) => missing).map(([analyte]) => analyte);
}

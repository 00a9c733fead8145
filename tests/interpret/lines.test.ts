// Every line of reasoning can be retraced: it tells its numbers, its limit and the rows behind them.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import { rowById } from '../../src/knowledge/row-index.js';
import { deficient, panelOf, reportOf, today, type Values } from './build.js';
import { lines } from './lines.js';
import { people, type Someone } from './people.js';

type Line = {
  readonly code?: string;
  readonly flag?: string;
  readonly analyte?: string | null;
  readonly tier?: string;
  readonly facts: Readonly<Record<string, string | number>>;
  readonly rules: readonly string[];
};

function say({ code, flag, analyte, tier, facts, rules }: Line): string {
  const of = analyte ? ` of ${analyte}` : '';
  const told = Object.entries(facts).map(([key, value]) => `${key} ${value}`);
  return `${code ?? flag}${of}${tier ? ` (${tier})` : ''}: ${told.join(', ')} <- ${rules.join(' ')}`;
}

function linesOf(report: Parameters<typeof interpret>[0]) {
  const { pattern, flags, hold, nearMisses, clinicianNotes } = interpret(report, today);
  return {
    supports: pattern.supports.map(say),
    against: pattern.against.map(say),
    flags: flags.map(say),
    hold: hold.reasons.map(say),
    near: nearMisses.map(say),
    notes: clinicianNotes.map(say),
  };
}

describe('a line', () => {
  it.each(lines)('about %s (%s) is: %s', (who, kind, line) => {
    expect(linesOf(people[who])[kind]).toContain(line);
  });

  it('names rows that are there, and a limit that one of them or the laboratory gave', () => {
    for (const report of Object.values(people)) {
      const { pattern, nearMisses, flags, hold, sources, results } = interpret(report, today);
      const printed = results.flatMap(({ comparedWith, also }) =>
        [comparedWith, ...also].flatMap((span) => [span?.low, span?.high]),
      );
      const known = sources.map(({ rule }) => rule);
      for (const { facts, rules } of [
        ...pattern.supports,
        ...pattern.against,
        ...nearMisses,
        ...flags,
        ...hold.reasons,
      ]) {
        expect(known).toEqual(expect.arrayContaining([...rules]));
        if (facts.limit === undefined) continue;
        const limits = rules.map((rule) => (rowById(rule) as { value?: number }).value);
        expect([...limits, ...printed]).toContain(facts.limit);
      }
    }
  });
});

describe('what nearly was', () => {
  const nearly = (report: Parameters<typeof interpret>[0]) =>
    interpret(report, today)
      .nearMisses.filter(({ code }) => code === 'pattern-nearly')
      .map(({ facts }) => `${facts.pattern} but for ${facts.test}`);

  it.each<readonly [Someone, readonly string[]]>([
    [
      'a pale man',
      [
        'discordant-or-implausible but for transferrin-saturation',
        'mixed-inflammation-and-iron-deficiency but for crp',
        'iron-deficient-erythropoiesis but for haemoglobin',
        'iron-deficiency-without-anaemia but for haemoglobin',
      ],
    ],
    [
      'ferritin 60 while inflamed',
      [
        'discordant-or-implausible but for transferrin-saturation',
        'anaemia-of-inflammation but for ferritin',
        'iron-deficient-erythropoiesis but for haemoglobin',
      ],
    ],
    [
      'high haemoglobin and ferritin',
      [
        'raised-tsat-and-ferritin but for transferrin-saturation',
        'anaemia-not-explained-by-iron but for haemoglobin',
      ],
    ],
    ['anaemia without CRP', []],
    ['a ferritin alone', []],
  ])('of %s is %o', (who, expected) => {
    expect(nearly(people[who])).toEqual(expected);
  });

  it('is blood loss only where a bleed is recorded, and high haemoglobin never', () => {
    const bled = nearly(people['blood vomited']);
    expect(bled).toContain('possible-recent-blood-loss but for haemoglobin');
    const quiet = nearly(people['a man with everything usual']);
    expect(quiet.join()).not.toMatch(/blood-loss|high-haemoglobin/);
  });

  /** Within 3 % of a limit (proposal); MCV 80 to 100 fL (PMC3934467). */
  it.each([
    [
      { mcv: 97 },
      'limit-nearly of: analyte mcv, value 97, unit fL, limit 100, by guideline, share 3',
    ],
    [
      { mcv: 103 },
      'limit-nearly of: analyte mcv, value 103, unit fL, limit 100, by guideline, share 3',
    ],
    [{ mcv: 96.9 }, null],
    [{ mcv: 103.1 }, null],
    [{ crp: 0 }, null],
  ] as const)('of %o: %s', (values, expected) => {
    const near = linesOf(reportOf(values as Values)).near.filter((line) =>
      line.startsWith('limit'),
    );
    const wanted = expected?.replace(' of:', ':');
    expect(near).toEqual(wanted === undefined ? [] : [`${wanted} <- usual-mcv near-limit-share`]);
  });

  it('names the row of the end that is near', () => {
    const high = linesOf(reportOf({ ferritin: 200 })).near.join('\n');
    expect(high).toContain(
      'limit 200, by guideline, share 3 <- ferritin-high-adult near-limit-share',
    );
    const own = linesOf(reportOf({ ferritin: { value: 300, low: 20, high: 300 } })).near.join('\n');
    expect(own).toContain('limit 300, by laboratory, share 3 <- near-limit-share');
  });
});

describe('haemoglobin is told by the limit that decided', () => {
  it.each([
    // The guideline's where it says low, the laboratory's where only that does.
    [
      { value: 120, low: 125, high: 170 },
      'haemoglobin-low: analyte haemoglobin, value 120, unit g/L, limit 130 <- who-2024-haemoglobin-men-15-65-anaemia',
    ],
    [
      { value: 132, low: 135, high: 170 },
      'haemoglobin-low: analyte haemoglobin, value 132, unit g/L, limit 135 <- ',
    ],
    [
      { value: 185, low: 130, high: 170 },
      'haemoglobin-high: analyte haemoglobin, value 185, unit g/L, limit 170 <- ',
    ],
    [
      { value: 172, low: 130, high: 170 },
      'haemoglobin-high: analyte haemoglobin, value 172, unit g/L, limit 170 <- ',
    ],
    [
      { value: 185, low: 130 },
      'haemoglobin-high: analyte haemoglobin, value 185, unit g/L, limit 180 <- usual-haemoglobin-high-men',
    ],
    [
      { value: 175, low: 130, high: 178 },
      'haemoglobin-usual: analyte haemoglobin, value 175, unit g/L, low 130, high 180 <- who-2024-haemoglobin-men-15-65-anaemia usual-haemoglobin-high-men',
    ],
  ])('%o: %s', (haemoglobin, expected) => {
    const { supports, against } = linesOf(
      reportOf({ haemoglobin, ferritin: 100, crp: 1, 'transferrin-saturation': 30 }),
    );
    expect([...supports, ...against]).toContain(expected);
  });
});

describe('other tests', () => {
  it.each<readonly [Values, string]>([
    [{ mcv: { value: 90, high: 100 } }, 'mcv-usual: analyte mcv, value 90, unit fL, high 100 <- '],
    [{ mcv: { value: 90, low: 80 } }, 'mcv-usual: analyte mcv, value 90, unit fL, low 80 <- '],
    [
      { mcv: { value: 104, low: 80, high: 103 } },
      'mcv-high: analyte mcv, value 104, unit fL, limit 103 <- ',
    ],
    [
      { crp: { value: 5, comparator: '<' } },
      'crp-usual: analyte crp, value 5, unit mg/L, comparator <, high 5 <- crp-raised',
    ],
    [
      { ferritin: 12.3456 },
      'ferritin-low: analyte ferritin, value 12.35, unit ug/L, limit 15 <- ferritin-low-5-and-over',
    ],
    [
      { ferritin: { value: 150, comparator: '>' } },
      'ferritin-cannot-tell: analyte ferritin, value 150, unit ug/L, comparator >, limit 200 <- ferritin-high-adult',
    ],
    [
      { ferritin: { value: 300, high: 250 } },
      'ferritin-high: analyte ferritin, value 300, unit ug/L, limit 250 <- ',
    ],
    [
      { ferritin: { value: 220, high: 250 } },
      'ferritin-usual: analyte ferritin, value 220, unit ug/L, low 30 <- ferritin-likely-adult',
    ],
    [
      { 'transferrin-saturation': { value: 30, comparator: '<' } },
      'comparator-undecided: analyte transferrin-saturation, value 30, unit %, comparator < <- saturation-low saturation-borderline saturation-high-men',
    ],
    [
      { 'serum-iron': 15.96, tibc: 100 },
      'transferrin-saturation-low: analyte transferrin-saturation, value 15.96, unit %, limit 16 <- saturation-low',
    ],
    [
      { 'serum-iron': 17.32, tibc: 50 },
      'transferrin-saturation-usual: analyte transferrin-saturation, value 35, unit %, low 20, high 50 <- saturation-borderline saturation-high-men',
    ],
    [
      { transferrin: { value: 2, doubt: 'value' }, tibc: 90 },
      'transferrin-high: analyte tibc, value 90, unit umol/L, limit 81 <- usual-tibc',
    ],
  ])('%o: %s', (values, expected) => {
    // Read once alone and once with all else usual, so that each line stands on one side or the other.
    const alone = linesOf(reportOf({ haemoglobin: 145, ...values }));
    const printed = values['serum-iron'] === undefined ? { 'transferrin-saturation': 30 } : {};
    const usual = { haemoglobin: 145, ferritin: 100, crp: 1, ...printed };
    const besides = linesOf(reportOf({ ...usual, ...values }));
    const all = [alone, besides].flatMap(({ supports, against }) => [...supports, ...against]);
    expect(all).toContain(expected);
  });

  it('take transferrin itself before TIBC', () => {
    const { against } = linesOf(reportOf({ ...deficient, transferrin: 2, tibc: 90 }));
    expect(against).toContain(
      'transferrin-usual: analyte transferrin, value 2, unit g/L, low 1.74, high 3.64 <- usual-transferrin-men',
    );
  });

  it('of a child: no upper limit of ferritin, and an MCV that rises with age to 10 years (from memory)', () => {
    const child = (ageMonths: number, values: Values) => {
      const { supports, against } = linesOf(reportOf(values, { patient: { ageMonths } }));
      return [...supports, ...against].join('\n');
    };
    const usual = { haemoglobin: 125, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };
    expect(child(100, usual)).toContain(
      'ferritin-usual: analyte ferritin, value 100, unit ug/L, low 20 <- ferritin-likely-child',
    );
    expect(child(60, { ...usual, mcv: 74.9 })).toContain('limit 75 <- mcv-child-base');
    expect(child(25, { ...usual, mcv: 72 })).toContain('limit 72.1 <- mcv-child-base');
    expect(child(144, { ...usual, mcv: 79.9 })).toContain('limit 80 <- mcv-child-base');
    expect(child(144, { ...usual, 'transferrin-saturation': 46 })).toContain(
      'limit 45 <- saturation-high-children',
    );
  });

  it('of a late pregnancy set the saturation aside also where ferritin is missing', () => {
    const patient = { sex: 'female', pregnancy: { weeks: null, trimester: 3 } } as const;
    const { against, flags } = linesOf(
      reportOf({ haemoglobin: 120, 'transferrin-saturation': 12 }, { patient }),
    );
    expect(against.join('\n')).toContain('transferrin-saturation-not-used-alone');
    expect(flags).toContain('pregnancy: group pregnant-trimester-3 <- ');
  });
});

describe('sources', () => {
  const rulesOf = (values: Values, facts: Parameters<typeof reportOf>[1] = {}) =>
    interpret(reportOf(values, facts), today).sources.map(({ rule }) => rule);
  const usual: Values = { haemoglobin: 145, ferritin: 100, 'transferrin-saturation': 30, crp: 1 };

  it('name everything behind a quiet report, and nothing else', () => {
    const near = ['pattern-not-iron', 'pattern-stores-falling', 'pattern-raised-ferritin'];
    const rules = rulesOf(usual).filter((rule) => !near.includes(rule));
    expect(rules.toSorted()).toEqual(
      [
        'group-men-15-65',
        'who-2024-haemoglobin-men-15-65-anaemia',
        'usual-haemoglobin-high-men',
        'saturation-low',
        'saturation-borderline',
        'saturation-high-men',
        'ferritin-likely-adult',
        'ferritin-high-adult',
        'usual-crp',
        'crp-raised',
        'pattern-all-in-range',
        'profile-all-in-range',
      ].toSorted(),
    );
  });

  it.each<readonly [string, Values, boolean]>([
    ['told-well-ferritin', { ferritin: 100 }, false],
    ['told-well-ferritin', { ferritin: 22 }, true],
    // Inside the laboratory's interval and under the guideline's limit.
    ['told-well-ferritin', { ferritin: { value: 22, low: 20, high: 500 } }, true],
    ['told-well-ferritin', { ferritin: { value: 20, comparator: '>' } }, false],
    ['told-well-haemoglobin', { haemoglobin: 125 }, true],
    ['who-2024-haemoglobin-men-15-65-moderate', { haemoglobin: 125 }, true],
    ['who-2024-haemoglobin-men-15-65-moderate', { haemoglobin: 135 }, false],
    ['tibc-per-transferrin', { 'serum-iron': 20, transferrin: 2.3 }, true],
    ['saturation-identity', { 'serum-iron': 20, tibc: 60 }, true],
    ['pattern-nothing-fits', { ferritin: 100 }, true],
    ['pattern-nothing-fits', usual, false],
    ['pattern-also-raised-ferritin', { ...usual, haemoglobin: 190, ferritin: 300 }, true],
  ])('name %s for %o: %s', (rule, values, named) => {
    expect(rulesOf(values).includes(rule)).toBe(named);
  });

  it('name the group, the height, the smoking and the growth of cells', () => {
    const groups = (patient: NonNullable<Parameters<typeof reportOf>[1]>['patient']) =>
      interpret(reportOf(usual, { patient: patient ?? {} }), today).groups.map(
        ({ rules }) => rules,
      );
    expect(groups({})).toEqual([['group-men-15-65']]);
    expect(groups({ altitudeMetres: 0, cigarettesPerDay: 0 })).toEqual([
      ['group-men-15-65', 'who-2024-altitude-0', 'who-2024-smoking-none'],
    ]);
    expect(groups({ altitudeMetres: -5 })).toEqual([['group-men-15-65']]);
    expect(groups({ sex: 'female', afterBirthWeeks: 2 })).toEqual([['after-birth-until']]);
    expect(rulesOf({ mcv: 74 }, { patient: { ageMonths: 60 } })).toEqual(
      expect.arrayContaining(['mcv-child-base', 'mcv-child-per-year', 'mcv-child-years']),
    );
    expect(rulesOf(usual, { patient: { ageMonths: 3 } })).toEqual(['youngest-months']);
  });

  it('name the unclear row where readings differ, once', () => {
    const rules = rulesOf({ ...usual, haemoglobin: 125 }, { patient: { sex: 'unknown' } });
    expect(rules).toContain('pattern-nothing-fits');
    expect(rules).toContain('pattern-not-iron');
    expect(rules).not.toContain('pattern-overload');
    expect(rules).not.toContain('pattern-recent-iron');
    expect(new Set(rules).size).toBe(rules.length);
  });
});

describe('a fall of haemoglobin', () => {
  const fell = (now: Values, then: Values, date: string) =>
    linesOf(reportOf(now, { previous: [panelOf(then, date)] })).hold.join('\n');
  it.each<readonly [string, Values, Values, string, boolean]>([
    ['of 20 g/L', { haemoglobin: 140 }, { haemoglobin: 160 }, '2026-10-01', true],
    ['to no haemoglobin', { ferritin: 100 }, { haemoglobin: 160 }, '2026-10-01', false],
    ['from no haemoglobin', { haemoglobin: 140 }, { ferritin: 300 }, '2026-10-01', false],
    [
      'five months ago on the same day',
      { haemoglobin: 140 },
      { haemoglobin: 160 },
      '2026-06-16',
      false,
    ],
    ['upwards', { haemoglobin: 160 }, { haemoglobin: 140 }, '2026-10-01', false],
  ])('%s holds the letter: %s', (_, now, then, date, held) => {
    expect(fell(now, then, date).includes('haemoglobin-fell')).toBe(held);
  });
});

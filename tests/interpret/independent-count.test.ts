// Ten thousand generated panels: positions counted by the tool and by a short script written from the published tables.
import { describe, expect, it } from 'vitest';
import { interpret } from '../../src/interpret/index.js';
import type { Analyte, Position } from '../../src/terms.js';
import { reportOf, today } from './build.js';
import {
  ferritinSide,
  type Generated,
  generate,
  haemoglobinSide,
  type Side,
  saturationSide,
} from './independent-count.js';

const people = generate(10_000);

const sides: Readonly<Record<Position, Side>> = {
  'well-below': 'below',
  'a-little-below': 'below',
  'in-range': 'in',
  'a-little-above': 'above',
  'well-above': 'above',
};

const told = people.map((one) => {
  const values = {
    haemoglobin: one.haemoglobin,
    ferritin: one.ferritin,
    crp: one.crp,
    'transferrin-saturation': one.saturation,
  };
  const patient = {
    ageMonths: one.months,
    sex: one.female ? 'female' : 'male',
    pregnancy: one.trimester === 0 ? null : { weeks: null, trimester: one.trimester },
    altitudeMetres: one.metres,
    cigarettesPerDay: one.cigarettes,
  } as const;
  const { results } = interpret(reportOf(values, { patient }), today);
  return new Map(results.map(({ analyte, position }) => [analyte, position]));
});

describe('ten thousand generated panels', () => {
  it.each([
    ['haemoglobin', haemoglobinSide],
    ['ferritin', ferritinSide],
    ['transferrin-saturation', saturationSide],
  ] as const)(
    'count the same by the tool and by the tables: %s',
    (analyte: Analyte, byTable: (one: Generated) => Side) => {
      const counted = { below: 0, in: 0, above: 0 };
      const expected = { below: 0, in: 0, above: 0 };
      const differing: Generated[] = [];
      people.forEach((one, at) => {
        const position = told[at]?.get(analyte) ?? null;
        const ours = position === null ? null : sides[position];
        const theirs = byTable(one);
        if (ours !== null) counted[ours] += 1;
        expected[theirs] += 1;
        if (ours !== theirs) differing.push(one);
      });
      expect(differing).toEqual([]);
      expect(counted).toEqual(expected);
      expect(Math.min(...Object.values(counted))).toBeGreaterThan(100);
    },
  );
});

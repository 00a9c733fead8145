// FHIR R4, the reference ranges of an observation: the one for this person is taken, or none.
// https://hl7.org/fhir/R4/observation-definitions.html (Observation.referenceRange: appliesTo, age)
import type { Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { fileOf } from './file.js';
import { alone, bundle, ferritin, patient, read, text } from './fhir-samples.js';

describe('the range of an observation', () => {
  it.each([
    [
      'an interval in words',
      { referenceRange: [{ text: '30 - 400' }] },
      'ferritin 9 ug/L 30..400 L',
    ],
    [
      'intervals by sex',
      {
        referenceRange: [
          { low: { value: 30 }, appliesTo: [{ text: 'male' }] },
          { low: { value: 15 }, appliesTo: [{ text: 'female' }] },
        ],
      },
      'ferritin 9 ug/L 15.. L',
    ],
    [
      'intervals by age, the patient being 42',
      {
        referenceRange: [
          { low: { value: 7 }, age: { high: { value: 17, unit: 'a' } } },
          { low: { value: 15 }, age: { low: { value: 18, unit: 'years' } } },
        ],
      },
      'ferritin 9 ug/L 15.. L',
    ],
    [
      'an interval for another age',
      { referenceRange: [{ low: { value: 200 }, age: { high: { value: 28, unit: 'd' } } }] },
      'ferritin 9 ug/L  L',
    ],
    [
      'intervals by sex and age',
      {
        referenceRange: [
          { low: { value: 7 }, age: { high: { value: 17 * 12, code: 'mo' } } },
          {
            low: { value: 30 },
            age: { low: { value: 18, code: 'a' } },
            appliesTo: [{ coding: [{ code: '248153007', display: 'Male' }] }],
          },
          {
            low: { value: 15 },
            age: { low: { value: 18, code: 'a' } },
            appliesTo: [{ coding: [{ code: '248152002', display: 'Female' }] }],
          },
        ],
      },
      'ferritin 9 ug/L 15.. L',
    ],
    [
      'an interval for the pregnant, which nobody says she is',
      { referenceRange: [{ low: { value: 10 }, appliesTo: [{ text: 'Pregnant' }] }] },
      'ferritin 9 ug/L  L',
    ],
    [
      'an interval in another unit',
      {
        referenceRange: [
          { low: { value: 0.03, unit: 'mg/L' }, high: { value: 0.4, unit: 'mg/L' } },
        ],
      },
      'ferritin 9 ug/L  L',
    ],
    [
      'an interval in the same unit, spelt otherwise',
      {
        referenceRange: [{ low: { value: 30, unit: 'µg/L' }, high: { value: 400, code: 'ug/L' } }],
      },
      'ferritin 9 ug/L 30..400 L',
    ],
    [
      'an interval for an age in a unit nobody knows',
      { referenceRange: [{ low: { value: 10 }, age: { low: { value: 18, unit: 'x' } } }] },
      'ferritin 9 ug/L  L',
    ],
    [
      'intervals that do not say for whom',
      { referenceRange: [{ low: { value: 30 } }, { low: { value: 15 } }] },
      'ferritin 9 ug/L  L',
    ],
  ])('is read from %s', async (_, changes, expected) => {
    expect(await read(alone(changes as Partial<Observation>))).toEqual([expected]);
  });

  it.each([
    ['for another age', { high: { value: 28, unit: 'd' } }, 'no interval is for this person'],
    [
      'for an age nobody can read',
      { high: { value: 28, unit: 'x' } },
      'cannot tell whether the interval is for this person',
    ],
  ])('says why an interval %s was not taken', async (_, age, expected) => {
    const json = alone({ referenceRange: [{ low: { value: 200 }, age }] });
    const { ignored } = await readInput(fileOf('a.json', json));
    expect(ignored.map(({ cannot }) => cannot)).toEqual([`${expected}; none was taken`]);
  });

  it('has no age where no birth date is known, and takes no interval that asks for one', async () => {
    const young = { low: { value: 7 }, age: { high: { value: 17, unit: 'a' } } };
    const json = text(
      bundle({ ...patient, birthDate: undefined }, { ...ferritin, referenceRange: [young] }),
    );
    expect(await read(json)).toEqual(['ferritin 9 ug/L  L']);
  });
});

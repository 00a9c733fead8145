// The clinic's own words in the reader's language: which ones stand in a letter, and which are refused.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readClinic } from '../../src/app/config.js';
import { clinicIn, wordedDetails } from '../../src/letter/clinic.js';
import { type Clinic, composeLetter } from '../../src/letter/index.js';
import { formOf, typed } from '../../src/page/clinic.js';
import { languageOf, translatedTags } from '../languages/folders.js';
import { clinic, letterOf } from './fixtures.js';

const tags = ['en', ...translatedTags].sort();
const example = JSON.parse(readFileSync('examples/clinic.json', 'utf8')) as Clinic;
const own = { ...clinic, outOfHours: 'Bay Night Line, 555-0150' };
const spanish = { hours: 'de lunes a viernes', outOfHours: 'línea nocturna, 555-0150' };

function problemsOf(details: object): readonly (readonly [string | null, string])[] {
  const { demo: _, ...file } = { ...own, ...details };
  const read = readClinic(
    'clinic.json',
    new TextEncoder().encode(JSON.stringify(file)),
    true,
    tags,
  );
  return read.ok ? [] : read.problems.map(({ place, expected }) => [place.field, expected ?? '']);
}

it('speaks of the clinic in the language of the letter, and in its own words where there are no others', () => {
  const translated = { ...own, translations: { es: spanish, so: { hours: '  ' } } };
  expect(clinicIn(translated, 'es')).toMatchObject({ ...spanish, emergencyNumber: '555-0199' });
  expect(clinicIn(translated, 'so').hours).toBe(own.hours);
  expect(clinicIn(translated, 'constructor').hours).toBe(own.hours);
});

it('puts translated hours and numbers in a letter, words in their own direction', () => {
  const translations = {
    ar: { hours: 'من الاثنين إلى الجمعة', emergencyNumber: 'الإسعاف، ٥٥٥-٠١٩٩' },
  };
  const letter = composeLetter({
    ...letterOf({ pattern: 'iron-deficiency-anaemia' }),
    language: languageOf('ar'),
    clinic: { ...own, translations },
  });
  const said = JSON.stringify(letter);
  expect(said).toContain('\u2068من الاثنين إلى الجمعة\u2069');
  expect(said).toContain('\u2068الإسعاف، ٥٥٥-٠١٩٩\u2069');
  expect(said).not.toContain(own.hours);
});

it('refuses words that send people to another number, in digits of any script', () => {
  const same = { outOfHours: 'الخط الليلي، ٥٥٥-٠١٥٠' };
  expect(problemsOf({ translations: { ar: same } })).toEqual([]);
  expect(problemsOf({ translations: { ar: { outOfHours: 'الخط الليلي، ٥٥٥-٠١٥١' } } })).toEqual([
    ['translations.ar.outOfHours', 'the same digits as in outOfHours'],
  ]);
  expect(problemsOf({ translations: { es: { emergencyNumber: '112' } } })).toEqual([
    ['translations.es.emergencyNumber', 'the same digits as in emergencyNumber'],
  ]);
  expect(problemsOf({ outOfHours: null, translations: { ar: same } })).toHaveLength(1);
});

it('refuses a library caller the same, before any letter', () => {
  const letter = composeLetter({
    ...letterOf({ pattern: 'iron-deficiency-anaemia' }),
    clinic: { ...own, translations: { es: { emergencyNumber: '112' } } },
  });
  expect(letter.ok ? [] : letter.problems.map(({ place }) => place.field)).toEqual([
    'translations.es.emergencyNumber',
  ]);
});

it('refuses a language that no letter is written in, and a detail that has no translation', () => {
  expect(problemsOf({ translations: { 'es-419': spanish } })).toEqual([
    ['translations.es-419', `one of ${tags.join(', ')}`],
  ]);
  expect(problemsOf({ translations: { es: { phone: '555-0142' } } })).toEqual([
    ['translations.es', 'no other fields'],
  ]);
  expect(problemsOf({ translations: { es: { hours: '' } } })).toHaveLength(1);
});

it('has the example clinic speak every language', () => {
  expect(Object.keys(example.translations ?? {}).sort()).toEqual([...translatedTags].sort());
  for (const tag of translatedTags)
    for (const detail of wordedDetails.filter((each) => example[each] !== null))
      expect(clinicIn(example, tag)[detail], `${tag} ${detail}`).not.toBe(example[detail]);
});

it('forgets translations of what somebody types over on the page, and keeps the others', () => {
  const form = formOf({ ...example, translations: { es: { ...spanish, outOfHours: undefined } } });
  expect(typed(form, 'phone', '1').translations).toEqual({ es: { hours: spanish.hours } });
  expect(typed(form, 'hours', 'always').translations).toEqual({ es: {} });
  expect(typed(form, 'hours', 'always').hours).toBe('always');
});

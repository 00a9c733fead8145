// In: the person as written. Out: the person as measured: closed words, months of age, believable numbers.
import type { WrittenPatient } from '../intake/written.js';
import type { Place } from '../problem.js';
import { conditions, dietAvoids, diets, medicines, type Sex } from '../terms.js';
import { readAge } from './age.js';
import { cleanText } from './clean-text.js';
import { type Findings, fault } from './findings.js';
import { readAfterBirth, readMenstruating, readPregnancy } from './pregnancy.js';
import type { DietFacts, Patient } from './report.js';
import { withinSpan } from './span.js';
import { readSex, readWords } from './words.js';

const longestName = 100;
const longestId = 64;
const mostCuisines = 20;

/**
 * The person, or null when the sex is missing or unreadable; every other fault is collected and left null.
 * @example checkPatient({ …, sex: 'F', birthDate: '1990-05-02' }, '2026-05-01', place, into) // { sex: 'female', ageMonths: 431, … }
 */
export function checkPatient(
  written: WrittenPatient,
  collected: string | null,
  place: Place,
  into: Findings,
): Patient | null {
  const sex = checkSex(written.sex, place, into);
  const { birthDate, ageMonths } = readAge(written, collected, place, into);
  const person = { sex, ageMonths };
  const pregnancy = readPregnancy(written, person, place, into);
  const facts = {
    id: checkText(written.id, longestId, 'patient.id', place, into),
    name: checkText(written.name, longestName, 'patient.name', place, into),
    birthDate,
    ageMonths,
    pregnancy,
    afterBirthWeeks: readAfterBirth(written, pregnancy, person, place, into),
    menstruating: readMenstruating(written, person, place, into),
    altitudeMetres: withinSpan(
      written.altitudeMetres,
      'altitude-metres',
      { ...place, field: 'patient.altitudeMetres' },
      into,
    ),
    cigarettesPerDay: checkCigarettes(written.cigarettesPerDay, place, into),
    diet: checkDiet(written.diet, place, into),
    conditions: readWords(written.conditions, conditions, 'patient.conditions', place, into),
    medicines: readWords(written.medicines, medicines, 'patient.medicines', place, into),
  };
  // Stryker disable next-line ConditionalExpression: without a sex the report is refused, whatever is in it.
  return sex === null ? null : { ...facts, sex };
}

function checkSex(written: string | null, place: Place, into: Findings): Sex | null {
  const at = { ...place, field: 'patient.sex' };
  const expected = 'female, male or unknown';
  if (written === null || written.trim() === '') {
    const remedy = "Write 'unknown' when it is not known; both readings are then compared.";
    into.problems.push(fault('sex-missing', at, 'no sex', { expected, remedy }));
    return null;
  }
  const sex = readSex(written);
  if (sex === null)
    // What stands there may be a name that slipped a column: it is not repeated.
    into.problems.push(fault('sex-unknown-word', at, 'cannot read the sex', { expected }));
  return sex;
}

/** A name too long is a problem, not cut: half a name on a letter is a wrong name. */
function checkText(
  written: string | null,
  longest: number,
  field: string,
  place: Place,
  into: Findings,
): string | null {
  const clean = written === null ? '' : cleanText(written);
  if (clean === '') return null;
  if ([...clean].length <= longest) return clean;
  const expected = `at most ${longest} characters`;
  into.problems.push(
    fault('text-too-long', { ...place, field }, 'the text is too long', { expected }),
  );
  return null;
}

function checkCigarettes(
  written: WrittenPatient['cigarettesPerDay'],
  place: Place,
  into: Findings,
): Patient['cigarettesPerDay'] {
  if (written === 'unknown-amount') return written;
  return withinSpan(
    written,
    'cigarettes-per-day',
    { ...place, field: 'patient.cigarettesPerDay' },
    into,
  );
}

function checkDiet(
  written: WrittenPatient['diet'],
  place: Place,
  into: Findings,
): DietFacts | null {
  if (written === null) return null;
  const told = written.pattern === null || written.pattern.trim() === '' ? [] : [written.pattern];
  const [pattern = null] = readWords(told, diets, 'patient.diet.pattern', place, into);
  return {
    pattern,
    avoids: readWords(written.avoids, dietAvoids, 'patient.diet.avoids', place, into),
    lowCost: written.lowCost,
    fastingMonth: written.fastingMonth,
    cuisines: written.cuisines
      .slice(0, mostCuisines)
      .map((cuisine) => cleanText(cuisine).slice(0, longestId))
      .filter((cuisine) => cuisine !== ''),
  };
}

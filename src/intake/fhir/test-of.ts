// A FHIR code with its texts, unit and specimen arrives; which analyte it is leaves, when all of them agree.
import { loincRowOf } from '../loinc.js';
import { type Which, whichAnalyte } from '../which-analyte.js';
import type { Concept } from './resources.js';

const loincSystem = 'http://loinc.org';

/** Each name is held against each code; no laboratory sends more. */
const mostNames = 50;

export type TestNamed = { readonly which: Which; readonly name: string };

/** Every name and code of the concept must mean one test; two meanings are a question. */
export function testOf(
  concept: Concept | undefined,
  unit: string | null,
  specimen: string | null,
): TestNamed {
  const codings = concept?.coding ?? [];
  const names = [concept?.text, ...codings.map(({ display }) => display)].flatMap((name) =>
    name === undefined || name.trim() === '' ? [] : [name],
  );
  const codes = codings.flatMap(({ system, code }) =>
    system === loincSystem && code !== undefined && loincRowOf(code) !== null ? [code] : [],
  );
  const [name = ''] = names;
  if (names.length > mostNames || codes.length > mostNames) {
    const which: Which = {
      is: 'question',
      cannot: 'cannot tell which test this is: it has too many names',
      found: `${codings.length} codings`,
      expected: `at most ${mostNames}`,
    };
    return { which, name };
  }
  const readings = [...new Set(names.length === 0 ? [''] : names)].flatMap((one) =>
    (codes.length === 0 ? [null] : codes).map((code) =>
      whichAnalyte({ name: one, code, unit, specimen }),
    ),
  );
  const question = readings.find(({ is }) => is === 'question');
  if (question !== undefined) return { which: question, name };
  const known = readings.filter(({ is }) => is !== 'unknown');
  const meanings = new Set(
    known.map((which) => (which.is === 'analyte' ? which.analyte : 'another test')),
  );
  if (meanings.size > 1) {
    const which: Which = {
      is: 'question',
      cannot: `cannot tell which test this is: its names say ${[...meanings].join(' and ')}`,
      found: null,
      expected: 'names and codes that mean the same test',
    };
    return { which, name };
  }
  return { which: known[0] ?? readings[0] ?? { is: 'unknown', near: null }, name };
}

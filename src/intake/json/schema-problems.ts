// What zod refused arrives, with the value it read; problems leave that say what was found and what would be right.
import type { z } from 'zod';
import { fault } from '../fault.js';
import { nearest } from '../nearest.js';
import type { Place, Problem } from '../../problem.js';

type Issue = z.core.$ZodIssue;

/** Fields that say who the person is: what stands in them is never shown. */
const personal = new Set(['id', 'name', 'birthDate', 'sex']);
const identifier = /^[A-Za-z][A-Za-z0-9_-]{0,30}$/;
const mostShown = 60;

/**
 * One problem for each field that does not fit, in the file's order.
 * The found value is left out for names, numbers and birth dates of patients, and for the sex, where a name
 * may stand that slipped a column.
 */
export function schemaProblems(
  error: z.ZodError,
  value: unknown,
  place: Place,
  knownKeys: (path: readonly PropertyKey[]) => readonly string[],
): readonly Problem[] {
  const told = error.issues
    .slice(0, mostTold)
    .flatMap((issue) => problemsOf(issue, value, place, knownKeys));
  if (error.issues.length <= mostTold) return told;
  const more = { found: `${error.issues.length} faults`, expected: 'the form that is described' };
  return [...told, fault('too-many-faults', place, 'stopped telling what is wrong here', more)];
}

/** Nobody reads more faults of one object. */
const mostTold = 200;

function problemsOf(
  issue: Issue,
  value: unknown,
  place: Place,
  knownKeys: (path: readonly PropertyKey[]) => readonly string[],
): Problem[] {
  const field = fieldOf(issue.path);
  const here = { ...place, field: field === '' ? place.field : field };
  const found = shown(valueAt(value, issue.path), issue.path);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys
      .slice(0, mostTold)
      .map((key) => unknownKey(key, issue.path, place, knownKeys(issue.path)));
  }
  if (valueAt(value, issue.path) === undefined) {
    return [
      fault('missing', here, 'cannot do without this field', { expected: expectedOf(issue) }),
    ];
  }
  if (issue.code === 'invalid_value') {
    const choices = issue.values.map(String);
    const near = found === null ? null : nearest(found, choices);
    return [
      fault('unknown-word', here, 'cannot use this word', {
        found,
        expected: choices.length > 8 && near !== null ? `'${near}'` : listed(choices),
        remedy: near === null ? null : `Did you mean '${near}'?`,
      }),
    ];
  }
  if (issue.code === 'invalid_union') {
    const inside = closest(issue.errors);
    if (inside.some((deeper) => deeper.path.length > 0 || deeper.code === 'invalid_value')) {
      return inside.flatMap((deeper) => {
        const whole = { ...deeper, path: [...issue.path, ...deeper.path] } as Issue;
        return problemsOf(whole, value, place, knownKeys);
      });
    }
  }
  return [
    fault('wrong-kind', here, 'cannot use what stands here', {
      found,
      expected: expectedOf(issue),
    }),
  ];
}

function unknownKey(
  key: string,
  path: readonly PropertyKey[],
  place: Place,
  known: readonly string[],
): Problem {
  const readable = identifier.test(key);
  const near = readable ? nearest(key, known) : null;
  return fault(
    'unknown-field',
    { ...place, field: fieldOf(readable ? [...path, key] : path) || null },
    readable ? 'cannot use a field of this name' : 'cannot use one of the fields here',
    {
      expected: known.length === 0 ? null : listed(known),
      remedy: near === null ? null : `Did you mean '${near}'?`,
    },
  );
}

/** The branch of a union that came nearest: the one that complains deepest inside. */
function closest(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  const depth = (issues: readonly Issue[]) => {
    if (issues.some(({ code }) => code === 'unrecognized_keys')) return -1;
    return Math.max(
      0,
      ...issues.map(({ path, code }) => path.length + (code === 'invalid_value' ? 1 : 0)),
    );
  };
  return [...branches].sort((a, b) => depth(b) - depth(a))[0] ?? [];
}

function expectedOf(issue: Issue): string {
  if (issue.code === 'invalid_type') return kinds[issue.expected] ?? issue.expected;
  if (issue.code === 'invalid_value') return listed(issue.values.map(String));
  if (issue.code === 'too_small' && issue.origin === 'array') return 'at least one entry';
  if (issue.code === 'too_small' && issue.origin === 'string')
    return 'some text, or no field at all';
  if (issue.code === 'too_small') return `a number not below ${issue.minimum}`;
  if (issue.code === 'too_big') return `a number not above ${issue.maximum}`;
  if (issue.code === 'invalid_format') return "a time such as '08:40'";
  const last = issue.path.at(-1);
  return (typeof last === 'string' ? unions[last] : undefined) ?? 'another kind of value';
}

const kinds: Readonly<Record<string, string>> = {
  string: 'text in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object in braces',
  array: 'a list in square brackets',
};

const unions: Readonly<Record<string, string>> = {
  pregnancy: '{ "weeks": 20 }, { "trimester": 2 } or null',
  value: 'a number, or text such as "12,5" or "<5"',
  low: 'a number, or text such as "12,5"',
  high: 'a number, or text such as "12,5"',
  cigarettesPerDay: "a whole number or 'unknown-amount'",
  trimester: '1, 2 or 3',
  bleeding: 'a word or a list of words',
};

function fieldOf(path: readonly PropertyKey[]): string {
  return path
    .map((part) => (typeof part === 'number' ? `[${part}]` : `.${String(part)}`))
    .join('')
    .replace(/^\./, '');
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inside, key) =>
      typeof inside === 'object' && inside !== null && Object.hasOwn(inside, key)
        ? (inside as Record<PropertyKey, unknown>)[key]
        : undefined,
    value,
  );
}

function shown(value: unknown, path: readonly PropertyKey[]): string | null {
  if (path.some((part) => typeof part === 'string' && personal.has(part))) return null;
  if (typeof value === 'string') return value.slice(0, mostShown);
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : null;
}

function listed(words: readonly string[]): string {
  return words.length === 1 ? `'${words[0]}'` : `one of ${words.join(', ')}`;
}

// What is wrong with a file, as values: collected by every reader, printed once at the edge.

/** Where in the operator's input something stands. `field` is a column name or a JSON path. */
export type Place = {
  readonly file: string | null;
  readonly row: number | null;
  readonly field: string | null;
};

/**
 * One fault of the input.
 * `found` is a laboratory value, unit or code, never a name or a birth date (those stay null).
 */
export type Problem = {
  readonly code: string;
  readonly place: Place;
  readonly cannot: string;
  readonly found: string | null;
  readonly expected: string | null;
  readonly remedy: string | null;
};

/** A value, or every problem that stood in its way. */
export type Checked<T> =
  | { readonly ok: true; readonly value: T; readonly notes: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const nowhere: Place = { file: null, row: null, field: null };

export function fine<T>(value: T, notes: readonly Problem[] = []): Checked<T> {
  return { ok: true, value, notes };
}

export function faulty<T>(problems: readonly Problem[]): Checked<T> {
  return { ok: false, problems };
}

/**
 * Problem as one sentence for the operator.
 * @example sayProblem(p) // 'results.csv, row 14, ferritin: cannot read "3O" as a number; expected digits such as 30.'
 */
export function sayProblem(problem: Problem): string {
  const { file, row, field } = problem.place;
  const place = [file, row === null ? null : `row ${row}`, field]
    .filter((part) => part !== null)
    .map((part) => visible(part))
    .join(', ');
  const found = problem.found === null ? '' : ` (found ${JSON.stringify(visible(problem.found))})`;
  const expected = problem.expected === null ? '' : `; expected ${problem.expected}`;
  const sentence = `${place === '' ? '' : `${place}: `}${problem.cannot}${found}${expected}.`;
  return harmless(problem.remedy === null ? sentence : `${sentence}\n  ${problem.remedy}`);
}

/** Names of tags and fields of a file stand within sentences of ours, which may have several lines. */
const harmless = (text: string) => text.replace(/(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '\u{FFFD}');

const longestShown = 60;

/** Text of a file as it may be shown: control and direction characters would let it rewrite the operator's terminal. */
export function visible(text: string, longest: number = longestShown): string {
  const plain = text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '\u{FFFD}');
  return plain.length > longest ? `${plain.slice(0, longest)}…` : plain;
}

// A cell such as '<5' or '12,5' arrives; its comparator and its digits leave, as written, or why they cannot be read.

export type NumberAsWritten =
  | { readonly ok: true; readonly value: string; readonly comparator: string | null }
  | {
      readonly ok: false;
      readonly code: string;
      readonly cannot: string;
      readonly expected: string;
    };

const comparators: Readonly<Record<string, string>> = {
  '<': '<',
  '>': '>',
  '<=': '<=',
  '>=': '>=',
  '=<': '<=',
  '=>': '>=',
  '≤': '<=',
  '≥': '>=',
};

const numberShape = /^[+-]?\d+(?:[.,]\d+)?$/;
/** '1,234' is a little over one in one country and over a thousand in another. */
const eitherWay = /^[+-]?[1-9]\d{0,2},\d{3}$/;
const grouped = /^[+-]?\d{1,3}(?:[ .,'\u2019\u00A0\u202F]\d{3})+(?:[.,]\d+)?$/;
const longestNumber = 20;
const longestCell = 60;

/**
 * Splits a written value into comparator and digits; the digits stay as the laboratory wrote them.
 * Problems: 'not-a-number', 'thousands' (groups of three digits that can be read two ways).
 * @example readNumberAsWritten('<5') // { ok: true, value: '5', comparator: '<' }
 */
export function readNumberAsWritten(
  text: string,
  decimal: '.' | ',' | null = null,
): NumberAsWritten {
  if (text.length > longestCell) return notANumber;
  const parts = /^\s*(<=|>=|=<|=>|<|>|\u2264|\u2265)?\s*(.*?)\s*$/su.exec(text);
  const sign = parts?.[1];
  const digits = parts?.[2] ?? '';
  const comparator = sign === undefined ? null : (comparators[sign] ?? null);
  if (digits.length > longestNumber || !/\d/.test(digits)) return notANumber;
  if (decimal === '.' && digits.includes(',')) return notWithComma;
  if (decimal !== ',' && eitherWay.test(digits)) return twoReadings(digits);
  if (numberShape.test(digits)) return { ok: true, value: digits, comparator };
  return grouped.test(digits) ? notGrouped : notANumber;
}

/** True where the digits can only mean a decimal comma, such as '12,5' or '0,123'. */
export function provesDecimalComma(value: string): boolean {
  return /^[+-]?\d+,\d+$/.test(value) && !eitherWay.test(value);
}

/** '1.234', which a file with decimal commas may mean as a thousand and more. */
const maybeThousandsByDot = /^[+-]?[1-9]\d{0,2}\.\d{3}$/;

/**
 * As `readNumberAsWritten`, in a file in which another number proves a decimal comma.
 * @example readBesideCommas('1.234') // { ok: false, code: 'thousands', … }
 */
export function readBesideCommas(text: string, decimal: '.' | ',' | null = null): NumberAsWritten {
  const read = readNumberAsWritten(text, decimal);
  return read.ok && maybeThousandsByDot.test(read.value) ? twoReadings(read.value) : read;
}

const notANumber: NumberAsWritten = {
  ok: false,
  code: 'not-a-number',
  cannot: 'cannot read this as a number',
  expected: 'digits such as 30 or 12.5, with < or > before them if the laboratory wrote it',
};
const notGrouped: NumberAsWritten = {
  ok: false,
  code: 'thousands',
  cannot: 'cannot read a number with thousands separators',
  expected: 'digits without separators, such as 1234',
};
const notWithComma: NumberAsWritten = {
  ok: false,
  code: 'not-a-number',
  cannot: 'cannot read a comma in a number when the decimal mark is a dot',
  expected: 'digits such as 12.5',
};

/** @example twoReadings('1,234') // cannot tell 1.234 from 1234 */
function twoReadings(digits: string): NumberAsWritten {
  return {
    ok: false,
    code: 'thousands',
    cannot: `cannot tell ${digits.replace(/[.,]/, '.')} from ${digits.replace(/[.,]/, '')}`,
    expected: 'digits without a thousands separator',
  };
}

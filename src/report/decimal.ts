// In: decimal numbers. Out: the nearest double to their exact product and quotient, so that 12.1 g/dL is 121 g/L.

/** digits * 10^-places, exactly. */
type Decimal = { readonly digits: bigint; readonly places: number };

/** Digits kept in a quotient that does not end; a double holds 17. */
const kept = 40;

/**
 * value * times / over, worked out on decimal digits and rounded once, at the end.
 * `times` and `over` are plain decimal strings; `over` is not zero.
 * @example scale(12.1, '10', '1') // 121
 * @example scale(100, '10', '55.845') // 17.90670606141999
 */
export function scale(value: number, times: string, over: string): number {
  // Most values are in our unit already.
  // Stryker disable next-line ConditionalExpression,StringLiteral: a shortcut to the same number.
  if (times === '1' && over === '1' && Number.isFinite(value)) return value;
  const [from, up, down] = [decimalOf(String(value)), decimalOf(times), decimalOf(over)];
  if (down.digits === 0n) throw new Error('a factor divides by zero');
  const digits = from.digits * up.digits * 10n ** BigInt(down.places + kept);
  return Number(`${digits / down.digits}e-${from.places + up.places + kept}`);
}

function decimalOf(text: string): Decimal {
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(text);
  if (match === null) throw new Error('not a finite decimal number');
  const [, sign = '', whole = '', fraction = '', exponent = '0'] = match;
  const places = fraction.length - Number(exponent);
  const digits = BigInt(`${sign}${whole}${fraction}`) * 10n ** BigInt(Math.max(0, -places));
  return { digits, places: Math.max(0, places) };
}

// A language and a number arrive; an age in months as people write it leaves, for a hint.

/**
 * With digits that every keyboard has.
 * @example monthsIn('es', 8) // '8 meses'
 */
export function monthsIn(tag: string, count: number): string {
  const form = { style: 'unit', unit: 'month', unitDisplay: 'long' } as const;
  return new Intl.NumberFormat(`${tag}-u-nu-latn`, form).format(count);
}

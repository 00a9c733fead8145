// A column's header arrives; the test's name and the unit printed in it leave.
import { unitFamily } from '../unit-family.js';

export type TestHeader = { readonly name: string; readonly unit: string | null };

const longestHeader = 200;
const bracketed = /^(.*?)[\s_]*[([{]\s*([^()[\]{}]+?)\s*[)\]}]\s*$/u;
const separated = /^(.*\S)(?:\s*[,;:]\s*|\s+|_)(\S+)$/u;
const slashedBySigns = /^(.*?)[_ ]((?:[munp]|mc)?(?:g|mol))[_ ]((?:d|m|u)?l)$/iu;

/**
 * Splits 'Ferritin (ug/L)', 'Hb g/dL' or 'ferritin_ug_l' into name and unit; the unit is null when there is none.
 * @example testHeader('Ferritin (ug/L)') // { name: 'Ferritin', unit: 'ug/L' }
 */
export function testHeader(header: string): TestHeader {
  const text = header.trim().slice(0, longestHeader);
  for (const shape of [bracketed, separated]) {
    const [, name, unit] = shape.exec(text) ?? [];
    if (name !== undefined && unit !== undefined && unitFamily(unit) !== null && name.trim() !== '')
      return { name: name.trim(), unit };
  }
  const [, name, top, bottom] = slashedBySigns.exec(text) ?? [];
  if (name !== undefined && unitFamily(`${top}/${bottom}`) !== null)
    return { name, unit: `${top}/${bottom}` };
  return { name: text, unit: /^%\s*\p{L}/u.test(text) ? '%' : null };
}

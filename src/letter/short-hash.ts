// A text arrives; eight hexadecimal digits leave that change when the text does.

// Offset and prime of the 32-bit FNV-1a hash: draft-eastlake-fnv, section 5.
const offset = 0x811c9dc5;
const prime = 0x01000193;
const utf8 = new TextEncoder();

/**
 * FNV-1a of the text's UTF-8 bytes: to notice that a text was changed, not to withstand an attack.
 * @example shortHash('foobar') // 'bf9cf968'
 */
export function shortHash(text: string): string {
  let hash = offset;
  for (const byte of utf8.encode(text)) hash = Math.imul(hash ^ byte, prime);
  return (hash >>> 0).toString(16).padStart(8, '0');
}

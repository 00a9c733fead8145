// The bytes of a text file arrive; its text leaves, with a note when the encoding was not declared.
import type { Problem } from '../problem.js';
import { at, fault } from './fault.js';

export type Decoded = { readonly text: string; readonly notes: readonly Problem[] };

/**
 * Text of a file: by its byte-order mark, else UTF-8, else windows-1252 with a note.
 * @example decode('a.csv', bytes).text
 */
export function decode(name: string, bytes: Uint8Array): Decoded {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return whole(new TextDecoder('utf-16le').decode(bytes));
  if (first === 0xfe && second === 0xff) return whole(new TextDecoder('utf-16be').decode(bytes));
  try {
    return whole(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    const note = fault(
      'encoding-guessed',
      at(name, null),
      'cannot read this as UTF-8; it was read as windows-1252',
      {
        expected: 'UTF-8',
        remedy: 'Look at names and units with accents or a micro sign.',
      },
    );
    return { text: windows1252(bytes), notes: [note] };
  }
}

/**
 * Bytes of UTF-8's byte-order mark at the start of a file: three or none.
 * @example markLength(new Uint8Array([0xef, 0xbb, 0xbf, 0x41])) // 3
 */
export function markLength([first, second, third]: Uint8Array): number {
  return first === 0xef && second === 0xbb && third === 0xbf ? 3 : 0;
}

function whole(text: string): Decoded {
  return { text, notes: [] };
}

/** Bytes 0x80 to 0x9F, by the WHATWG Encoding Standard's index windows-1252. */
const upper = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ';
const firstUpper = 0x80;

/**
 * Text in windows-1252. Node 20's own decoder takes this label for ISO 8859-1 and loses dashes and quotes.
 * @example windows1252(new Uint8Array([0x33, 0x96, 0x34])) // '3–4'
 */
export function windows1252(bytes: Uint8Array): string {
  const plain = new TextDecoder('iso-8859-1').decode(bytes);
  return plain.replace(
    /[\u0080-\u009F]/g,
    (sign) => upper[(sign.codePointAt(0) ?? firstUpper) - firstUpper] ?? sign,
  );
}

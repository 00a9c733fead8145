// The bytes of an HL7 v2 file arrive; its text leaves, decoded as MSH-18 says.
import { type Decoded, decode, windows1252 } from '../decode.js';
import { type Encoded, encodingOf } from '../encoding.js';
import type { LargeFile } from '../large-file.js';

/** Names of HL7 table 0211 and the ones laboratories write instead. */
const labels: readonly (readonly [RegExp, string])[] = [
  [/^(?:UNICODE )?UTF-?8$/i, 'utf-8'],
  [/^UNICODE$/i, 'utf-8'],
  [/^(?:8859\/1|ISO-?8859-?1|ISO_IR ?100|LATIN-?1)$/i, 'iso-8859-1'],
  [/^(?:8859\/2|ISO-?8859-?2)$/i, 'iso-8859-2'],
  [/^(?:8859\/5|ISO-?8859-?5)$/i, 'iso-8859-5'],
  [/^(?:8859\/9|ISO-?8859-?9)$/i, 'iso-8859-9'],
  [/^(?:8859\/15|ISO-?8859-?15)$/i, 'iso-8859-15'],
  [/^(?:windows-?1252|cp-?1252)$/i, 'windows-1252'],
];

/**
 * Text of a message file in the set that MSH-18 names; read as any text file where it is absent or names none we know.
 * @example decodeMessage('lab.hl7', bytes).text
 */
export function decodeMessage(name: string, bytes: Uint8Array): Decoded {
  const textOf = decoderOf(bytes.subarray(0, headLength));
  return textOf === null ? decode(name, bytes) : { text: textOf(bytes), notes: [] };
}

/** The same of a file read in pieces. */
export function encodedMessages(file: LargeFile): Encoded {
  const textOf = decoderOf(file.read(0, Math.min(file.size, headLength)));
  return textOf === null ? encodingOf(file) : { file, textOf, notes: [] };
}

/** By MSH-18 of the first message; null where it says UTF-8 or nothing known. */
function decoderOf(bytes: Uint8Array): ((bytes: Uint8Array) => string) | null {
  const head = new TextDecoder('iso-8859-1').decode(bytes);
  const msh = /MSH(.)[^\r\n]*/.exec(head);
  const declared =
    msh?.[0]
      .split(msh[1] ?? '|')
      [declaredAt]?.split('~')[0]
      ?.trim() ?? '';
  const label = labels.find(([shape]) => shape.test(declared))?.[1];
  if (label === undefined || label === 'utf-8') return null;
  if (label === 'windows-1252') return windows1252;
  const decoder = new TextDecoder(label);
  return (text) => decoder.decode(text);
}

const headLength = 2000;
/** MSH-18 when MSH-1 is the separator itself. */
const declaredAt = 17;

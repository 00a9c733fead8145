// The bytes of an HL7 v2 file arrive; its text leaves, decoded as MSH-18 says.
import { type Decoded, decode, windows1252 } from '../decode.js';

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
 * Text of a message file. Without MSH-18, or with a set this program does not know: as any text file.
 * @example decodeMessage('lab.hl7', bytes).text
 */
export function decodeMessage(name: string, bytes: Uint8Array): Decoded {
  const head = new TextDecoder('iso-8859-1').decode(bytes.subarray(0, headLength));
  const msh = /MSH(.)[^\r\n]*/.exec(head);
  const declared =
    msh?.[0]
      .split(msh[1] ?? '|')
      [declaredAt]?.split('~')[0]
      ?.trim() ?? '';
  const label = labels.find(([shape]) => shape.test(declared))?.[1];
  if (label === undefined || label === 'utf-8') return decode(name, bytes);
  const text = label === 'windows-1252' ? windows1252(bytes) : new TextDecoder(label).decode(bytes);
  return { text, notes: [] };
}

const headLength = 2000;
/** MSH-18 when MSH-1 is the separator itself. */
const declaredAt = 17;

// The text of an HL7 v2 file arrives; its messages leave, each cut into segments, fields and components.
// HL7 v2.5.1 chapter 2: the separators stand in MSH-1 and MSH-2; escapes are decoded after cutting.

export type Separators = {
  readonly field: string;
  readonly component: string;
  readonly repetition: string;
  readonly escaping: string;
  readonly subcomponent: string;
};

export type Segment = {
  readonly name: string;
  /** Line of the file. */
  readonly row: number;
  /** Fields as written; index 1 is the first field of the standard's count. */
  readonly fields: readonly string[];
};

export type Message = { readonly separators: Separators; readonly segments: readonly Segment[] };

const nameLength = 3;
const segmentName = /^[A-Z][A-Z0-9]{2}$/;

/**
 * Messages of a file: MLLP frames, batch headers (FHS, BHS) and blank lines are passed over.
 * CR, LF and CRLF all end a segment. Lines before the first MSH are not part of a message.
 * @example messagesOf('MSH|^~\\&|…\rPID|…').length // 1
 */
export function messagesOf(text: string): readonly Message[] {
  return messagesIn(text.split(/\r\n|\r|\n/).map((line, i) => ({ line, row: i + 1 })));
}

/** The same of lines that know their place. @param wanted names of the only segments to cut; null for all. */
export function messagesIn(
  lines: readonly { readonly line: string; readonly row: number }[],
  wanted: readonly string[] | null = null,
): readonly Message[] {
  const messages: { separators: Separators; segments: Segment[] }[] = [];
  for (const { line, row } of lines) {
    const plain = bare(line);
    if (opensMessage(plain)) {
      const separators = separatorsOf(plain);
      messages.push({ separators, segments: [mshOf(plain, row, separators)] });
      continue;
    }
    const message = messages.at(-1);
    if (message === undefined || plain === '') continue;
    if (wanted !== null && !wanted.includes(plain.slice(0, nameLength))) continue;
    const fields = plain.split(message.separators.field);
    const name = fields[0] ?? '';
    if (!segmentName.test(name) || ['FHS', 'BHS', 'BTS', 'FTS'].includes(name)) continue;
    message.segments.push({ name, row, fields });
  }
  return messages;
}

/** True for the header segment that every message begins with. */
export function opensMessage(line: string): boolean {
  const plain = bare(line);
  return plain.startsWith('MSH') && plain.length > 7;
}

/** Without blanks and the signs that MLLP puts before and behind a message; VT is a blank to `trim`. */
function bare(line: string): string {
  let [start, end] = [0, line.length];
  while (start < end && isOutside(line, start)) start++;
  while (end > start && isOutside(line, end - 1)) end--;
  return line.slice(start, end);
}

function isOutside(line: string, at: number): boolean {
  return line[at] === '\u001C' || (line[at] ?? '').trim() === '';
}

function separatorsOf(line: string): Separators {
  const field = line[3] ?? '|';
  const signs = line.slice(4).split(field)[0] ?? '';
  const [component = '^', repetition = '~', escaping = '\\', subcomponent = '&'] = signs;
  return { field, component, repetition, escaping, subcomponent };
}

/** MSH-1 is the separator itself, so the fields behind it count one more. */
function mshOf(line: string, row: number, { field }: Separators): Segment {
  const rest = line.slice(4).split(field);
  return { name: 'MSH', row, fields: ['MSH', field, ...rest] };
}

/** Field by its number in the standard; '' when it is not there. */
export function field(segment: Segment, number: number): string {
  return segment.fields[number] ?? '';
}

/** Repetitions of a field, as written. */
export function repetitions(message: Message, segment: Segment, number: number): readonly string[] {
  const text = field(segment, number);
  return text === '' ? [] : text.split(message.separators.repetition);
}

/**
 * Component of the first repetition, decoded; null when empty or '""', which means 'delete'.
 * @example component(message, pid, 5, 2) // given name
 */
export function component(
  message: Message,
  segment: Segment,
  number: number,
  part: number,
): string | null {
  return partOf(message, repetitions(message, segment, number)[0] ?? '', part);
}

/** The same of one repetition. Only the first sub-component is read. */
export function partOf(message: Message, repetition: string, part: number): string | null {
  if (repetition === '') return null;
  const { component: between, subcomponent } = message.separators;
  const whole = repetition.split(between)[part - 1] ?? '';
  const text = decodeEscapes(whole.split(subcomponent)[0] ?? '', message.separators).trim();
  return text === '' || text === '""' ? null : text;
}

/**
 * Decodes the escapes of HL7 v2.5.1 section 2.7; one it does not know stays as written.
 * @example decodeEscapes('a\\T\\b', separators) // 'a&b'
 */
export function decodeEscapes(text: string, separators: Separators): string {
  const { escaping } = separators;
  if (!text.includes(escaping)) return text;
  const pieces = text.split(escaping);
  let decoded = pieces[0] ?? '';
  for (let i = 1; i < pieces.length; i += 2) {
    const closed = i + 1 < pieces.length;
    const code = pieces[i] ?? '';
    const sign = closed ? signOf(code, separators) : null;
    decoded += sign ?? `${escaping}${code}${closed ? escaping : ''}`;
    decoded += pieces[i + 1] ?? '';
  }
  return decoded;
}

function signOf(code: string, separators: Separators): string | null {
  switch (code) {
    case 'F':
      return separators.field;
    case 'S':
      return separators.component;
    case 'T':
      return separators.subcomponent;
    case 'R':
      return separators.repetition;
    case 'E':
      return separators.escaping;
    case '.br':
    case '.sp':
      return '\n';
    case 'H':
    case 'N':
      return '';
    default:
      return /^X(?:[0-9A-F]{2})+$/i.test(code) ? bytesOf(code.slice(1)) : null;
  }
}

function bytesOf(hex: string): string {
  return (hex.match(/../g) ?? [])
    .map((byte) => String.fromCharCode(Number.parseInt(byte, 16)))
    .join('');
}

// A number of runs arrives; every reader, by both of its doors, is fed broken and shuffled files, and each broken promise is told.
import fc from 'fast-check';
import { openReports, readInput } from '../../src/intake/index.js';
import { windows1252 } from '../../src/intake/decode.js';
import { inMemory } from '../../src/intake/large-file.js';
import type { InputFile, Intake, WrittenReport } from '../../src/intake/written.js';
import { type Checked, type Problem, sayProblem } from '../../src/problem.js';
import { samples, secret, spreadsheet } from './fuzz-samples.js';
import { zip } from './sheet.js';

const pieces = [
  ...['"', '\\', ',', ';', '\t', '\n', '\r', '|', '^', '~', '&', '<', '>', '-', '0', '7', '%'],
  ...['{', '}', '[', ']', ':', '(', ')', '  ', '\0', '\u202E', '\u000B', '\uFEFF', 'É', '١'],
  ...[
    '1,234',
    '1e3',
    'Ferritin',
    'Hb',
    'ug/L',
    '__proto__',
    '\n\n',
    'MSH|',
    '\rPID|',
    '<row>',
    '&#53;',
  ],
];

export type Change = { readonly at: number; readonly cut: number; readonly put: string };
export const changes = fc.array(
  fc.record({
    at: fc.nat(2000),
    cut: fc.oneof({ weight: 9, arbitrary: fc.nat(6) }, { weight: 1, arbitrary: fc.nat(300) }),
    put: fc.oneof(fc.constantFrom(...pieces), fc.string({ maxLength: 4 })),
  }),
  { maxLength: 5 },
);

export function changed(text: string, all: readonly Change[]): string {
  return all.reduce((whole, { at, cut, put }) => {
    const place = at % (whole.length + 1);
    return whole.slice(0, place) + put + whole.slice(place + cut);
  }, text);
}

/** A broken file, what can be read in it, and whether the secret still stands where a name does. */
type Broken = {
  readonly file: InputFile;
  readonly texts: readonly string[];
  readonly guarded: boolean;
};

const broken: fc.Arbitrary<Broken> = fc
  .tuple(fc.constantFrom(...samples), changes)
  .map(([{ name, text, guards }, all]) => {
    const after = changed(text, all);
    const elsewhere = guards.reduce((rest, guard) => rest.replaceAll(guard, ''), after);
    const guarded = guards.every((guard) => after.includes(guard)) && !elsewhere.includes(secret);
    return { file: { name, bytes: new TextEncoder().encode(after) }, texts: [after], guarded };
  });

/** The same in bytes, where text is no longer sure to be UTF-8, or marked as UTF-16. */
const brokenBytes: fc.Arbitrary<Broken> = fc
  .tuple(
    fc.constantFrom(...samples),
    fc.constantFrom<BufferEncoding>('utf8', 'latin1', 'utf16le'),
    fc.array(fc.tuple(fc.nat(2000), fc.nat(255)), { maxLength: 4 }),
  )
  .map(([{ name, text }, encoding, all]) => {
    const bytes = Buffer.from(encoding === 'utf16le' ? `\uFEFF${text}` : text, encoding);
    for (const [at, byte] of all) bytes[at % bytes.length] = byte;
    const decoded = ['utf-8', 'utf-16le', 'utf-16be'].map((label) =>
      new TextDecoder(label).decode(bytes),
    );
    const texts = [...decoded, windows1252(bytes)];
    return { file: { name, bytes: Uint8Array.from(bytes) }, texts, guarded: false };
  });

/** A spreadsheet with its sheet broken, or the bytes of the zip around it. */
const brokenSheets: fc.Arbitrary<Broken> = fc
  .tuple(changes, fc.array(fc.tuple(fc.nat(5000), fc.nat(255)), { maxLength: 2 }), fc.boolean())
  .map(([all, overwritten, inside]) => {
    const last = spreadsheet.length - 1;
    const parts = spreadsheet.map((part, i) =>
      i === last && inside ? { ...part, text: changed(part.text, all) } : part,
    );
    const bytes = Uint8Array.from(zip(parts));
    if (!inside) for (const [at, byte] of overwritten) bytes[at % bytes.length] = byte;
    const sheet = inside ? (parts[last]?.text ?? '') : new TextDecoder().decode(bytes);
    return { file: { name: 'a.xlsx', bytes }, texts: [sheetSays(sheet)], guarded: false };
  });

/** The sheet's text, its entities as signs, its numbers also as a spreadsheet shows them, and its days. */
function sheetSays(xml: string): string {
  const plain = xml
    .replace(/&#(\d{1,6});/g, (_, code: string) => String.fromCodePoint(Number(code)))
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');
  const numbers = plain.match(/[+-]?[\d.]+(?:e[+-]?\d+)?/gi) ?? [];
  return [plain, ...numbers.map((text) => String(Number(text)))].join('\n');
}

/** Every number, interval end and mark of a report stands in the input; escapes are undone first. */
function inventedIn(report: WrittenReport, texts: readonly string[]): readonly string[] {
  const plain = texts
    .join('\n')
    .replace(/\\u([0-9a-f]{4})/gi, (_, hex: string) =>
      String.fromCharCode(Number.parseInt(hex, 16)),
    );
  const results = [report.panel, ...report.previous].flatMap((panel) => panel.results);
  const written = results.flatMap(({ value, interval, labFlag }) => [
    value,
    interval?.low,
    interval?.high,
    // Escapes of a message stand for signs; its letters and digits stand as they are.
    ...(labFlag ?? '').split(/[^\p{L}\p{N}]+/u),
  ]);
  return written.flatMap((part) =>
    part === null || part === undefined || plain.includes(part) ? [] : [part],
  );
}

type Read = {
  readonly format: Intake['format'];
  readonly reports: readonly Checked<WrittenReport>[];
  readonly told: readonly Problem[];
};

async function byBothDoors(
  file: InputFile,
): Promise<{ readonly whole: Read; readonly piecewise: Read }> {
  const { format, reports, ignored } = await readInput(file);
  const source = await openReports(inMemory(file));
  const reads = Array.from({ length: source.count }, (_, index) => source.read(index));
  return {
    whole: { format, reports, told: ignored },
    piecewise: {
      format: source.format,
      reports: reads.map(({ report }) => report),
      told: [...source.ignored, ...reads.flatMap((read) => read.ignored)],
    },
  };
}

function keep({ reports, told }: Read, { texts, guarded }: Broken): void {
  if (reports.length === 0) throw new Error('neither a report nor a problem');
  for (const read of reports) {
    const invented = read.ok ? inventedIn(read.value, texts) : [];
    if (invented.length > 0) throw new Error(`invented ${JSON.stringify(invented)}`);
  }
  const problems = [...told, ...reports.flatMap((read) => (read.ok ? read.notes : read.problems))];
  const leak = guarded ? problems.map(sayProblem).find((text) => text.includes(secret)) : undefined;
  if (leak !== undefined) throw new Error(`repeated a name: ${leak}`);
}

/** One object alone, a list cut by another reader, and text that only a whole can tell are judged by the whole. */
const sameByBoth: ReadonlySet<Intake['format']> = new Set(['csv', 'hl7v2', 'text', 'xlsx']);

/**
 * Feeds `runs` broken files to the readers. Throws, with the smallest file found, when one crashes, takes over a
 * second of computing, tells a value that the file does not hold, repeats a name, or reads otherwise report by report.
 */
export async function fuzzReaders(runs: number, seed?: number): Promise<void> {
  const some = fc.oneof(
    { weight: 6, arbitrary: broken },
    { weight: 2, arbitrary: brokenBytes },
    { weight: 2, arbitrary: brokenSheets },
  );
  const holds = fc.asyncProperty(some, async (one) => {
    const started = process.cpuUsage();
    const { whole, piecewise } = await byBothDoors(one.file);
    if (process.cpuUsage(started).user > longest) throw new Error('took over a second');
    keep(whole, one);
    keep(piecewise, one);
    if (!sameByBoth.has(whole.format) || whole.format !== piecewise.format) return;
    if (JSON.stringify(whole.reports) !== JSON.stringify(piecewise.reports))
      throw new Error('read report by report it says something else');
  });
  await fc.assert(holds, { numRuns: runs, ...(seed === undefined ? {} : { seed }) });
}

/** Microseconds of computing. */
const longest = 1_000_000;

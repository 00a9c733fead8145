// A file of any length arrives; a source that reads its reports one at a time leaves.
import { csvSource } from './csv/source.js';
import { encodingOf } from './encoding.js';
import { encodedMessages } from './hl7v2/charset.js';
import { hl7Source } from './hl7v2/source.js';
import { jsonSource } from './json/source.js';
import { inWindows, type LargeFile } from './large-file.js';
import { type InputOptions, readInput } from './read-input.js';
import { type ReportSource, refusedSource, sourceOf } from './report-source.js';
import { largestFile, sniffStart, tooLarge } from './sniff.js';
import type { ColumnMap } from './table/column-map.js';
import type { Intake } from './written.js';

/** See `openReports` of the room. */
export async function openLarge(
  file: LargeFile,
  { columns = {} }: Pick<InputOptions, 'columns'>,
): Promise<ReportSource> {
  const format = sniffStart(file);
  if (typeof format !== 'string') return refusedSource('text', [format]);
  const source = opened(format, inWindows(file), columns);
  if (source !== null) return source;
  if (file.size > largestFile)
    return refusedSource(format, [tooLarge(file.name, file.size, largestFile)]);
  const bytes = file.read(0, file.size);
  return sourceOf(await readInput({ name: file.name, bytes }, { columns }));
}

/** Null for a format, or a form of it, that only reading the whole can cut. */
function opened(
  format: Intake['format'],
  file: LargeFile,
  columns: ColumnMap,
): ReportSource | null {
  if (format !== 'csv' && format !== 'hl7v2' && format !== 'json') return null;
  const encoded = format === 'hl7v2' ? encodedMessages(file) : encodingOf(file);
  if (encoded.file.size === 0) return null;
  const source =
    format === 'csv'
      ? csvSource(encoded, columns)
      : format === 'hl7v2'
        ? hl7Source(encoded)
        : jsonSource(encoded);
  return source === null ? null : { ...source, ignored: [...encoded.notes, ...source.ignored] };
}

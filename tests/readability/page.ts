// Verdicts of every letter arrive; one HTML page and a table in plain text leave.
import { escapeHtml } from '../../src/render/escape.js';
import { limits, type Verdict } from './judge.js';

const heads = [
  'letter',
  'words',
  'mean',
  'longest',
  'paragraph',
  'grade',
  'no terms',
  'SMOG',
  'active',
  'formula',
  'score',
  'gate',
];

const rounded = (value: number | undefined, digits = 1) =>
  value === undefined ? '' : value.toFixed(digits);

function cellsOf({ name, language, scores, faults }: Verdict): readonly string[] {
  const { english, reading } = scores;
  return [
    `${language} ${name}`,
    String(scores.words),
    rounded(scores.meanSentence),
    String(scores.longestSentence),
    String(scores.longestParagraph),
    rounded(english?.grade),
    rounded(english?.gradeWithoutTerms),
    rounded(english?.smog),
    english === null ? '' : `${Math.round(english.active * 100)} %`,
    reading?.formula ?? '',
    rounded(reading?.score),
    english === null ? 'no gate' : faults.length === 0 ? 'pass' : faults.join('; '),
  ];
}

export function tableOf(verdicts: readonly Verdict[]): string {
  const rows = [heads, ...verdicts.map(cellsOf)];
  const widths = heads.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

export function pageOf(verdicts: readonly Verdict[], skipped: readonly string[]): string {
  const row = (cells: readonly string[], tag: string) =>
    `<tr>${cells.map((cell, nth) => (nth === 0 ? `<th scope="${tag === 'th' ? 'col' : 'row'}">${escapeHtml(cell)}</th>` : `<${tag}${tag === 'th' ? ' scope="col"' : ''}>${escapeHtml(cell)}</${tag}>`)).join('')}</tr>`;
  const failed = verdicts.filter(({ faults }) => faults.length > 0).length;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>How hard the letters are to read</title>
<style>body{font-family:system-ui,sans-serif;margin:1.5rem;line-height:1.4}table{border-collapse:collapse}th,td{border-bottom:1px solid #999;padding:.2rem .5rem;text-align:start;font-weight:400}thead th{font-weight:700}</style></head>
<body><h1>How hard the letters are to read</h1>
<p>${verdicts.length} letters, ${failed} past a gate. English must keep: grade ${limits.grade} or below, SMOG ${limits.smog} or below, mean sentence ${limits.meanSentence} words or fewer, none over ${limits.longestSentence} (${limits.easyRead} in easy read), ${limits.paragraph} sentences a paragraph or fewer. Other languages are reported only. Words in result lines, headings, names, dates and phone numbers are not counted. SMOG of fewer than thirty sentences is an estimate.</p>
${skipped.length === 0 ? '' : `<p>Not read: ${escapeHtml(skipped.join(', '))}.</p>`}
<div tabindex="0"><table><thead>${row(heads, 'th')}</thead><tbody>
${verdicts.map((verdict) => row(cellsOf(verdict), 'td')).join('\n')}
</tbody></table></div></body></html>
`;
}

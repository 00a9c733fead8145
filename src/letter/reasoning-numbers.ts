// Graded results and changes arrive; the tables of numbers for the clinician leave.
import type {
  Change,
  Comparison,
  GradedResult,
  Interpretation,
} from '../interpret/interpretation.js';
import { rowById } from '../knowledge/row-index.js';
import type { Explain } from './explain.js';
import type { ReasoningTable } from './reasoning.js';
import type { Cite } from './reasoning-sources.js';
import { amount, sayRange, shortSource } from './say-facts.js';

/** Result, the laboratory's interval and the guideline's limits, all in one unit, and where it lies. */
export function numbersTable(
  { results }: Interpretation,
  { words }: Explain,
  cite: Cite,
): ReasoningTable | null {
  if (results.length === 0) return null;
  return {
    head: (['test', 'result', 'laboratory', 'guideline', 'position', 'source'] as const).map(
      (column) => words(`column.${column}`),
    ),
    rows: results.map((result) => {
      const all = [result.comparedWith, ...result.also].filter((one) => one !== null);
      const guidelines = all.filter(({ by }) => by === 'guideline');
      return [
        words(`analyte.${result.analyte}`),
        resultOf(result, words),
        rangesOf(
          all.filter(({ by }) => by === 'laboratory'),
          words,
        ),
        rangesOf(guidelines, words),
        positionOf(result, guidelines, words),
        [...new Set(guidelines.flatMap((one) => sourcesOf(one, cite)))].join('; '),
      ];
    }),
  };
}

function resultOf(result: GradedResult, words: Explain['words']): string {
  const { copied, value, unit, derived, doubt } = result;
  const asWritten = `${copied.value} ${copied.unit}`.trim();
  if (doubt !== null) return words('value.doubtful', { value: asWritten });
  if (derived !== null) return words('value.derived', { value: amount(copied.value, unit) });
  const same = copied.value.replace(/^[<>=\s]+/, '').replace(',', '.') === String(value);
  const close = Number(copied.value.replace(/^[<>=\s]+/, '').replace(',', '.')) === value;
  if (same || close) return asWritten;
  const ours = amount(Math.round(value * 100) / 100, unit);
  return words('value.ours', { copied: asWritten, ours });
}

function rangesOf(spans: readonly Comparison[], words: Explain['words']): string {
  const ranges = spans.flatMap(({ low, high }) => sayRange(low, high, '', words) ?? []);
  return ranges.length === 0 ? words('range.none') : [...new Set(ranges)].join('; ');
}

function positionOf(
  { position, comparedWith }: GradedResult,
  guidelines: readonly Comparison[],
  words: Explain['words'],
): string {
  const told = words(`position.${position ?? 'none'}`);
  const others = [...new Set(guidelines.map((one) => words(`position.${one.position ?? 'none'}`)))];
  const agree = others.every((other) => other === told);
  if (position === null || agree || comparedWith?.by === 'guideline') return told;
  return words('position.two', { laboratory: told, guideline: others.join(', ') });
}

function sourcesOf({ rule, highRule, source }: Comparison, cite: Cite): readonly string[] {
  if (rule === null) return [];
  const high = highRule === null ? [] : [cite(shortSource(rowById(highRule).source), [highRule])];
  return [cite(shortSource(source), [rule]), ...high];
}

/** Each earlier test beside today's, with what chance alone could make. */
export function changesTable(
  { changes }: Interpretation,
  explain: Explain,
  cite: Cite,
): ReasoningTable | null {
  if (changes.length === 0) return null;
  const { words, date } = explain;
  return {
    head: (['test', 'date', 'result', 'change', 'limit'] as const).map((column) =>
      words(`column.${column}`),
    ),
    rows: changes.map((change) => [
      words(`analyte.${change.analyte}`),
      date(change.earlier.collected),
      `${change.earlier.copied.value} ${change.earlier.copied.unit}`.trim(),
      `${words(`change.${change.verdict}`)} ${percent(change.percent)}`.trim(),
      chance(change, words, cite),
    ]),
  };
}

function chance({ limitUp, limitDown, rules }: Change, words: Explain['words'], cite: Cite) {
  if (limitUp === null || limitDown === null) return '';
  const limits = words('change.limit', { up: percent(limitUp), down: percent(limitDown) });
  return cite(limits, rules);
}

const percent = (value: number | null) => (value === null ? '' : `${Math.round(value)} %`);

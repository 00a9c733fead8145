// Results with their days arrive; the newest panel and the earlier ones leave.
import type { WrittenPanel, WrittenResult } from './written.js';

export type DatedResult = { readonly collected: string | null; readonly result: WrittenResult };
export type OrderedPanels = {
  readonly panel: WrittenPanel;
  readonly previous: readonly WrittenPanel[];
};

/**
 * Panels by day, the newest first; results without a day form a panel of their own, taken as newest only when alone.
 * Days are ISO dates. Within a day results keep the order of the file.
 * @example orderPanels([{ collected: '2026-01-02', result }]).panel.collected // '2026-01-02'
 */
export function orderPanels(dated: readonly DatedResult[]): OrderedPanels {
  const byDay = new Map<string | null, WrittenResult[]>();
  for (const { collected, result } of dated) {
    const before = byDay.get(collected);
    if (before === undefined) byDay.set(collected, [result]);
    else before.push(result);
  }
  const panels = [...byDay]
    .map(([collected, results]) => ({ collected, results }))
    .sort((a, b) => (b.collected ?? '').localeCompare(a.collected ?? ''));
  const [panel = { collected: null, results: [] }, ...previous] = panels;
  return { panel, previous };
}

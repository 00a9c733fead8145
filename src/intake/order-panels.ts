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
  const days = [...new Set(dated.map(({ collected }) => collected))].sort((a, b) =>
    (b ?? '').localeCompare(a ?? ''),
  );
  const panels = days.map((collected) => ({
    collected,
    results: dated.filter((one) => one.collected === collected).map(({ result }) => result),
  }));
  const [panel = { collected: null, results: [] }, ...previous] = panels;
  return { panel, previous };
}

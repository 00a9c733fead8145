// Earlier panels and a graded result arrive; two to seven points of one test leave, or none.
import type { GradedResult } from '../../interpret/interpretation.js';
import type { Trend } from '../content.js';
import type { Told } from '../letter-input.js';

const mostPoints = 7;

export function tellTrend(
  { interpretation, report, voice }: Told,
  { analyte, comparedWith, copied, doubt, value }: GradedResult,
): Trend | null {
  const change = interpretation.changes.find((each) => each.analyte === analyte);
  if (change === undefined || doubt !== null) return null;
  const earlier = report.previous.flatMap(({ collected, results }) => {
    const found = results.find((result) => result.analyte === analyte && result.doubt === null);
    return found === undefined
      ? []
      : [{ value: found.quantity.value, label: found.copied.value, date: collected }];
  });
  const points = [...earlier, { value, label: copied.value, date: report.panel.collected }]
    .sort((one, other) => one.date.localeCompare(other.date))
    .slice(-mostPoints)
    .map((point) => ({ ...point, date: voice.date(point.date).text }));
  if (points.length < 2) return null;
  return {
    kind: 'trend',
    points,
    low: comparedWith?.low ?? null,
    high: comparedWith?.high ?? null,
    usual: voice.say('line.usual'),
    title: voice.say('trend.title'),
    description: voice.say(`trend.described.${change.verdict}`, { points: points.length }),
  };
}

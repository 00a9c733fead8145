// In: readings and earlier panels. Out: what the clinician's sheet says beside the pattern: severity, arithmetic, pathways, response.
import { limit } from '../knowledge/limit.js';
import type { Panel, Report } from '../report/report.js';
import { diseaseFindings } from './disease.js';
import { belowGuideline, haemoglobinLimitsFor, severityOf } from './haemoglobin.js';
import { mentzer, stfrIndex } from './index-of-cells.js';
import type { Reason } from './interpretation.js';
import { pathwayNotes } from './pathway.js';
import type { Reading } from './reading.js';

/**
 * Notes for the clinician, never for the letter.
 * @example notesFor(reading, report).map(({ code }) => code) // ['severity-band', 'saturation-computed', …]
 */
export function notesFor(reading: Reading, report: Report): readonly Reason[] {
  return [
    ...severityNotes(reading),
    ...arithmeticNotes(reading),
    ...diseaseNotes(reading),
    ...pathwayNotes(reading),
    ...responseNotes(reading, report.panel, report.previous),
  ];
}

function severityNotes({ person }: Reading): readonly Reason[] {
  const haemoglobin = person.sure.get('haemoglobin')?.quantity;
  if (haemoglobin === undefined) return [];
  const found = severityOf(person, haemoglobin);
  const lines = haemoglobinLimitsFor(person).filter((one) => one.band === 'anaemia');
  const both = lines.length > 1 ? lines : [];
  return [
    ...(found === null
      ? []
      : [
          {
            code: 'severity-band',
            facts: {
              severity: found.severity,
              limit: found.line.value,
              value: haemoglobin.value,
              unit: haemoglobin.unit,
              group: person.group.slug,
            },
            rules: [found.line.row.id],
          },
        ]),
    ...(both.length === 0
      ? []
      : [
          {
            code: 'guidelines-side-by-side',
            facts: Object.fromEntries(both.map(({ guideline, value }) => [guideline, value])),
            rules: both.map(({ row }) => row.id),
          },
        ]),
  ];
}

function arithmeticNotes({ computed, person }: Reading): readonly Reason[] {
  const round = (value: number) => Math.round(value * 10) / 10;
  const [cells, stfr] = [mentzer(person), stfrIndex(person)];
  const saturation: readonly Reason[] =
    computed === null
      ? []
      : computed.kind === 'computed'
        ? [
            {
              code: 'saturation-computed',
              facts: {
                saturation: round(computed.value),
                iron: round(computed.iron),
                tibc: round(computed.tibc),
                from: computed.from.join(' '),
              },
              rules: computed.rules,
            },
          ]
        : [
            {
              code: 'saturation-not-computed',
              facts: { why: computed.why },
              rules: computed.rules,
            },
          ];
  return [
    ...saturation,
    ...(cells === null
      ? []
      : [{ code: 'mentzer-index', facts: { value: cells.value }, rules: cells.rules }]),
    ...(stfr === null
      ? []
      : [{ code: 'stfr-index', facts: { value: stfr.value }, rules: stfr.rules }]),
  ];
}

function diseaseNotes({ person, results }: Reading): readonly Reason[] {
  return diseaseFindings(person, results)
    .filter(({ met }) => met)
    .flatMap(({ condition, rules }) => {
      const code = condition.startsWith('kidney')
        ? 'kidney-rule-met'
        : condition === 'heart-failure'
          ? 'heart-failure-rule-met'
          : 'bowel-disease-rule-met';
      return [{ code, facts: { condition }, rules }];
    });
}

const millisecondsADay = 86_400_000;

/** Haemoglobin 2 to 4 weeks into iron, where it was low before; outside that time it is too early or says nothing here. */
function responseNotes(
  { person }: Reading,
  panel: Panel,
  previous: readonly Panel[],
): readonly Reason[] {
  const { medicines } = person.patient;
  if (!medicines.includes('iron-tablets') && !medicines.includes('iron-injection')) return [];
  const [now] = plainHaemoglobins(panel);
  const [then] = previous.flatMap(plainHaemoglobins);
  if (now === undefined || then === undefined) return [];
  if (belowGuideline(person, then.quantity) !== 'yes') return [];
  const days = Math.round(
    (Date.parse(now.collected) - Date.parse(then.collected)) / millisecondsADay,
  );
  const rise = now.quantity.value - then.quantity.value;
  const facts = { days, rise, collected: then.collected };
  const [from, until] = [limit('response-days-from'), limit('response-days-until')];
  const recheck = limit('recheck-weeks');
  const wait: Reason = { code: 'recheck-after-iron', facts: {}, rules: [recheck.id] };
  if (days < from.value) return [{ code: 'response-too-early', facts, rules: [from.id] }, wait];
  const needed = limit(days < until.value ? 'response-rise-2-weeks' : 'response-rise-4-weeks');
  const code = rise >= needed.value ? 'response-good' : 'response-poor';
  return [
    { code, facts: { ...facts, needed: needed.value }, rules: [needed.id, from.id, until.id] },
  ];
}

/** Haemoglobin of a panel where it is a plain number without doubt, with the date. */
function plainHaemoglobins({ collected, results }: Panel) {
  return results
    .filter(
      ({ analyte, doubt, quantity }) =>
        analyte === 'haemoglobin' && doubt === null && quantity.comparator === null,
    )
    .map(({ quantity }) => ({ collected, quantity }));
}

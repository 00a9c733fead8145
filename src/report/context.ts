// In: what surrounds the sample, as written. Out: closed words and believable numbers.
import type { WrittenContext } from '../intake/written.js';
import type { SpanName } from '../knowledge/plausible.js';
import type { Place } from '../problem.js';
import { bleedings, symptoms } from '../terms.js';
import { cleanText } from './clean-text.js';
import { type Findings, fault } from './findings.js';
import type { Context } from './report.js';
import { withinSpan } from './span.js';
import { readWords } from './words.js';

const mostNotes = 50;
const longestNote = 500;

/**
 * Symptoms, bleeding, iron given before the sample, fasting, hour of the sample and the laboratory's notes.
 * @example checkContext({ …, symptoms: ['Chest pain'] }, place, into).symptoms // ['chest-pain']
 */
export function checkContext(written: WrittenContext, place: Place, into: Findings): Context {
  const span = (value: number | null, name: SpanName, field: string) =>
    withinSpan(value, name, { ...place, field: `context.${field}` }, into);
  const hours = 'hours-before-sample';
  const days = 'days-before-sample';
  return {
    symptoms: readWords(written.symptoms, symptoms, 'context.symptoms', place, into),
    bleeding: checkBleeding(written.bleeding, place, into),
    ironTabletHoursBefore: span(written.ironTabletHoursBefore, hours, 'ironTabletHoursBefore'),
    ironInjectionDaysBefore: span(written.ironInjectionDaysBefore, days, 'ironInjectionDaysBefore'),
    transfusionDaysBefore: span(written.transfusionDaysBefore, days, 'transfusionDaysBefore'),
    fasting: written.fasting,
    sampleTime: checkTime(written.sampleTime, place, into),
    notes: checkNotes(written.notes, place, into),
  };
}

function checkBleeding(written: readonly string[], place: Place, into: Findings) {
  const read = readWords(written, bleedings, 'context.bleeding', place, into);
  if (read.includes('none') && read.length > 1) {
    const at = { ...place, field: 'context.bleeding' };
    const more = { found: read.join(', '), expected: 'none alone, or the bleeding' };
    into.problems.push(fault('bleeding-contradiction', at, 'bleeding contradicts itself', more));
  }
  return read;
}

function checkTime(written: string | null, place: Place, into: Findings): string | null {
  if (written === null || written.trim() === '') return null;
  const time = written.trim();
  if (/^([01]\d|2[0-3]):[0-5]\d$/.test(time)) return time;
  const at = { ...place, field: 'context.sampleTime' };
  const more = { found: time, expected: 'hours and minutes such as 08:40' };
  into.problems.push(fault('time-unread', at, 'cannot read the time of the sample', more));
  return null;
}

/** Notes are shown to the clinician; what is cut away is said. */
function checkNotes(written: readonly string[], place: Place, into: Findings): readonly string[] {
  const clean = written.map(cleanText).filter((note) => note !== '');
  const kept = clean.slice(0, mostNotes).map((note) => [...note].slice(0, longestNote).join(''));
  if (kept.join('').length < clean.join('').length) {
    const at = { ...place, field: 'context.notes' };
    const expected = `at most ${mostNotes} notes of ${longestNote} characters`;
    into.notes.push(fault('notes-cut', at, 'cut the notes of the laboratory short', { expected }));
  }
  return kept;
}

// A fact of the person or the day arrives; what was read of the text so far takes it, or asks about it.
import { readAge } from '../age-as-written.js';
import { type DateAsWritten, readDate } from '../date-as-written.js';
import { at, fault } from '../fault.js';
import { type ColumnMeaning, sexOf } from '../names.js';
import { isOpen, openPregnancy, saysYes, weeksOfPregnancy } from '../pregnancy-as-written.js';
import type { WrittenPatient } from '../written.js';
import { type Fact, holdsAnother } from './facts.js';
import type { Reading } from './reading.js';

type Refuse = (cannot: string, expected: string) => void;

/** Takes one fact. Problems: one that cannot be read, seems to hold another, or was said otherwise above. */
export function takeFact(reading: Reading, fact: Fact, row: number): void {
  const { meaning } = fact;
  const refuse: Refuse = (cannot, expected) =>
    reading.problems.push(
      fault(`bad-${meaning}`, at(reading.file, row, meaning), cannot, { expected }),
    );
  if (holdsAnother(fact)) refuse('cannot tell where this ends', 'each fact on a line of its own');
  else takers[meaning]?.(reading, fact.text, refuse, fact.label);
}

/** Results below are of this day. */
export function takeDay(reading: Reading, { date, time }: DateAsWritten): void {
  reading.collected = date;
  if (time !== null) reading.times.set(date, time);
}

type Taker = (reading: Reading, text: string, refuse: Refuse, label: string) => void;

const takers: Partial<Readonly<Record<ColumnMeaning, Taker>>> = {
  id: (reading, id, refuse) => set(reading, { id }, refuse),
  name: (reading, name, refuse) => set(reading, { name }, refuse),
  sex: (reading, text, refuse, label) => {
    const sex = sexOf(text, new Set(), label);
    if (sex === null) refuse('cannot tell the sex from this word', 'female, male or unknown');
    else set(reading, { sex }, refuse);
  },
  birthDate: (reading, text, refuse) => {
    const date = dateIn(reading, text, refuse);
    if (date !== null) set(reading, { birthDate: date.date }, refuse);
  },
  ageYears: (reading, text, refuse) => {
    const age = readAge(text);
    if (age === null) refuse('cannot read this as an age', 'whole years such as 34');
    else set(reading, { ageYears: age.years, ageMonths: age.months }, refuse);
  },
  collected: (reading, text, refuse) => {
    const date = dateIn(reading, text, refuse);
    if (date !== null) takeDay(reading, date);
  },
  fasting: (reading, text) => {
    reading.fasting = /^(?:y|yes|true)$/i.test(text) ? true : saysNo(text) ? false : null;
  },
  pregnancyWeeks: (reading, text, refuse) => takePregnancy(reading, text, false, refuse),
  pregnant: (reading, text, refuse) => takePregnancy(reading, text, true, refuse),
};

/** @param yesIsEnough the word before it says only whether there is a pregnancy. */
function takePregnancy(reading: Reading, text: string, yesIsEnough: boolean, refuse: Refuse) {
  if (saysNo(text)) return;
  const weeks = weeksOfPregnancy(/^\d{1,2}$/.test(text) ? `${text} weeks` : text, null);
  if (weeks !== null) set(reading, { pregnancy: { weeks, trimester: null } }, refuse);
  else if (yesIsEnough && saysYes(text)) set(reading, { pregnancy: openPregnancy }, refuse);
  else refuse('cannot read the weeks of the pregnancy', 'weeks such as 20');
}

function saysNo(text: string): boolean {
  return /^(?:n|no|false)$/i.test(text);
}

function dateIn(reading: Reading, text: string, refuse: Refuse): DateAsWritten | null {
  const date = readDate(text, reading.order);
  if (date === null)
    refuse('cannot read this as a date, or tell the day from the month', 'such as 2026-11-25');
  return date;
}

/** A pasted text is of one person: what it says twice must be the same. */
function set(reading: Reading, facts: Partial<WrittenPatient>, refuse: Refuse): void {
  for (const [key, value] of Object.entries(facts)) {
    const said = reading.patient[key as keyof WrittenPatient];
    const before = key === 'pregnancy' && isOpen(reading.patient.pregnancy) ? null : said;
    if (before !== null && value !== null && JSON.stringify(before) !== JSON.stringify(value))
      refuse(
        'cannot tell whose results these are: the text says something else above',
        'the results of one person',
      );
  }
  reading.patient = { ...reading.patient, ...facts };
}

// In: a reading, today's date. Out: flags of the sample: recent iron, blood given or lost, age, fasting.
import { limit } from '../../knowledge/limit.js';
import { monthsBetween } from '../../report/index.js';
import type { FlagRaised } from '../interpretation.js';
import type { Reading } from '../reading.js';
import { raise } from './raise.js';

/** Flags of the sample and of what came before it. */
export function sampleFlags(
  reading: Reading,
  collected: string,
  today: string,
): readonly FlagRaised[] {
  return [...doseFlags(reading), ...bloodFlags(reading), ...timeFlags(reading, collected, today)];
}

function doseFlags({ person }: Reading): readonly FlagRaised[] {
  const { ironTabletHoursBefore, ironInjectionDaysBefore, transfusionDaysBefore } = person.context;
  const doses = [
    ['recent-iron-tablet', ironTabletHoursBefore, 'iron-tablet-hours', 'hours'],
    ['recent-iron-injection', ironInjectionDaysBefore, 'iron-injection-days', 'days'],
    ['recent-transfusion', transfusionDaysBefore, 'transfusion-days', 'days'],
  ] as const;
  return doses.flatMap(([flag, before, id, unit]) => {
    const row = limit(id);
    return before !== null && before <= row.value
      ? [raise(flag, { facts: { [unit]: before }, rules: [row.id] })]
      : [];
  });
}

function bloodFlags({ person, facts }: Reading): readonly FlagRaised[] {
  const { bleeding } = person.context;
  const bled = facts.get('bleed') ?? [];
  const other = bled.filter(({ facts: { bleeding } }) => bleeding !== 'blood-donation');
  return [
    ...other.map((one) => raise('recent-bleed', { facts: one.facts, rules: one.rules })),
    ...(bleeding.includes('blood-donation') ? [raise('blood-donation')] : []),
    ...(bleeding.includes('heavy-periods') ? [raise('heavy-periods')] : []),
  ];
}

function timeFlags(
  { person, read }: Reading,
  collected: string,
  today: string,
): readonly FlagRaised[] {
  const old = limit('old-sample-months');
  const months = monthsBetween(collected, today);
  const older =
    months > old.value || (months === old.value && collected.slice(8) !== today.slice(8));
  const raised = read.saturation?.level === 'high';
  const { fasting } = person.context;
  const analyte = 'transferrin-saturation' as const;
  return [
    ...(older ? [raise('old-sample', { facts: { months }, rules: [old.id] })] : []),
    ...(raised && fasting === false ? [raise('not-fasting', { analyte })] : []),
    ...(raised && fasting === null ? [raise('fasting-unknown', { analyte })] : []),
  ];
}

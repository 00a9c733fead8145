// In: a laboratory's marks (flag, status) in many spellings. Out: HL7's normality codes, and what becomes of the row.
import type { Comparator, LabFlag } from './report.js';

/** Spellings of a flag, upper case, without spaces; HL7 table 0078 first, then what analysers print. */
const flagSpellings: Readonly<Record<LabFlag, readonly string[]>> = {
  N: ['N', 'NORMAL', 'WITHINRANGE', 'INRANGE', 'WNL'],
  L: ['L', 'LOW', 'LO', '↓', '-', 'BELOW', 'BELOWLOWNORMAL', 'L*', '*L'],
  H: ['H', 'HIGH', 'HI', '↑', '+', 'ABOVE', 'ABOVEHIGHNORMAL', 'H*', '*H'],
  LU: ['LU', 'SIGNIFICANTLYLOW'],
  HU: ['HU', 'SIGNIFICANTLYHIGH'],
  LL: ['LL', 'CRITICALLOW', 'CRITICALLYLOW', 'PANICLOW', '↓↓', '--', 'L!', 'LL!', 'CL'],
  HH: ['HH', 'CRITICALHIGH', 'CRITICALLYHIGH', 'PANICHIGH', '↑↑', '++', 'H!', 'HH!', 'CH'],
  A: ['A', 'ABNORMAL', '*', 'ABN'],
  AA: ['AA', 'CRITICAL', 'CRIT', 'PANIC', 'CRITICALLYABNORMAL', '!', '!!', '**'],
};

/** Change against an earlier result: no statement about this one (HL7 table 0078: U, D, B, W). */
const changeOnly: readonly string[] = ['U', 'D', 'B', 'W', 'NULL', 'NONE'];

const flags: ReadonlyMap<string, LabFlag> = new Map(
  (Object.keys(flagSpellings) as LabFlag[]).flatMap((flag) =>
    flagSpellings[flag].map((spelling) => [spelling, flag] as const),
  ),
);

export type FlagRead = {
  readonly flag: LabFlag | null;
  /** '<' and '>' as flags say that the value is off the instrument's scale. */
  readonly offScale: Comparator | null;
  readonly known: boolean;
};

/**
 * The laboratory's mark. Several may stand together ('H~U'); the first that speaks of this result counts.
 * A mark nobody knows is taken as 'A', so that a clinician looks.
 * @example readLabFlag('low') // { flag: 'L', offScale: null, known: true }
 */
export function readLabFlag(written: string | null): FlagRead {
  const whole = (written ?? '')
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[\s_()]/g, '');
  const parts = whole.split(/[~,;/&|^]/).filter((part) => part !== '');
  const offScale = parts.includes('<') ? '<' : parts.includes('>') ? '>' : null;
  const rest = parts.filter((part) => part !== '<' && part !== '>' && !changeOnly.includes(part));
  const read = rest.map((part) => flags.get(part)).find((flag) => flag !== undefined);
  if (read !== undefined) return { flag: read, offScale, known: true };
  if (rest.length > 0) return { flag: 'A', offScale, known: false };
  return { flag: offScale === null ? null : offScale === '<' ? 'L' : 'H', offScale, known: true };
}

export type Standing = 'final' | 'corrected' | 'preliminary' | 'void';

/** FHIR observation-status and HL7 table 0085, lower case. */
const standings: Readonly<Record<Standing, readonly string[]>> = {
  final: ['', 'final', 'f', 'complete', 'completed', 'u', 'verified', 'v'],
  corrected: ['corrected', 'amended', 'appended', 'c'],
  preliminary: [
    'preliminary',
    'p',
    'partial',
    's',
    'registered',
    'r',
    'provisional',
    'interim',
    'unknown',
  ],
  void: ['entered-in-error', 'cancelled', 'canceled', 'wrong', 'w', 'deleted', 'd', 'x'],
};

/**
 * What a result's status makes of it; null for a word in neither standard.
 * @example readStanding('entered in error') // 'void'
 */
export function readStanding(written: string | null): Standing | null {
  const word = (written ?? '')
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
  const all = Object.keys(standings) as Standing[];
  return all.find((standing) => standings[standing].includes(word)) ?? null;
}

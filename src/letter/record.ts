// The translation record of one language arrives; how far each message was checked leaves, as long as its texts still stand.
import { z } from 'zod';
import { type Checked, faulty, fine } from '../problem.js';
import type { Namespace } from './english.js';
import { shortHash } from './short-hash.js';
import { sourceOf } from './source-of.js';

/** How far a translation was checked, weakest first. A new one begins as a draft by a computer. */
export const reviewSteps = ['draft-machine', 'translated', 'revised', 'signed'] as const;
export type ReviewStep = (typeof reviewSteps)[number];
export type ReviewState = ReviewStep | 'source';

const isoDate = /^\d{4}-\d{2}-\d{2}$/;
/** Hash of the English text, hash of the translation. */
const hashes = /^[0-9a-f]{8} [0-9a-f]{8}$/;

/** What one person, or the computer, answered for on one day. */
const act = z
  .strictObject({
    state: z.enum(reviewSteps),
    who: z.string().min(1),
    credential: z.string().min(1).nullable(),
    date: z.string().regex(isoDate),
    messages: z.record(z.string(), z.record(z.string(), z.string().regex(hashes))),
  })
  .refine(({ state, credential }) => state === 'draft-machine' || credential !== null, {
    message: 'a person who answers for a translation has a credential',
  });
const recordFile = z.strictObject({ acts: z.array(act) });
export type Act = Readonly<z.infer<typeof act>>;

/** Who answered for a message, and for which texts. */
export type Entry = Omit<Act, 'messages'> & {
  readonly sourceHash: string;
  readonly targetHash: string;
};
/** By namespace and key, such as 'letter title'. */
export type TranslationRecord = ReadonlyMap<string, Entry>;

export const noRecord: TranslationRecord = new Map();
const placeOf = (namespace: string, key: string): string => `${namespace} ${key}`;

export function entryOf(record: TranslationRecord, namespace: Namespace, key: string) {
  return record.get(placeOf(namespace, key)) ?? null;
}

/**
 * Reads locales/TAG/record.json. A message recorded twice counts as its later act.
 * @example readRecord('pl', { acts: [] }) // { ok: true, value: new Map(), notes: [] }
 */
export function readRecord(tag: string, file: unknown): Checked<TranslationRecord> {
  const read = recordFile.safeParse(file);
  if (!read.success) {
    return faulty([
      {
        code: 'language-record',
        place: { file: `locales/${tag}/record.json`, row: null, field: null },
        cannot: 'cannot read the translation record',
        found: null,
        expected: z.prettifyError(read.error),
        remedy: null,
      },
    ]);
  }
  const record = new Map<string, Entry>();
  for (const { messages, ...facts } of read.data.acts) {
    for (const [namespace, keys] of Object.entries(messages)) {
      for (const [key, both] of Object.entries(keys)) {
        const [sourceHash = '', targetHash = ''] = both.split(' ');
        record.set(placeOf(namespace, key), { ...facts, sourceHash, targetHash });
      }
    }
  }
  return fine(record);
}

/** A text of the catalogue with the place it stands at. */
export type Placed = {
  readonly namespace: Namespace;
  readonly key: string;
  readonly text: string;
};

export const hashesOf = ({ namespace, key, text }: Placed): string =>
  `${shortHash(sourceOf(namespace, key) ?? '')} ${shortHash(text)}`;

/**
 * How far the message is checked today. A changed English source, or a translation changed since, voids what was
 * answered for: the message counts as a draft again.
 * @example stateOf(record, { namespace: 'letter', key: 'title', text: 'Wyniki …' }) // 'draft-machine'
 */
export function stateOf(record: TranslationRecord, placed: Placed): ReviewStep {
  const entry = entryOf(record, placed.namespace, placed.key);
  if (entry === null || entry.state === 'draft-machine') return 'draft-machine';
  return isVoid(entry, placed) ? 'draft-machine' : entry.state;
}

/** True when a text the entry answers for has changed since. */
export function isVoid(entry: Entry, placed: Placed): boolean {
  return hashesOf(placed) !== `${entry.sourceHash} ${entry.targetHash}`;
}

/** True when a new translation is wanted: the English changed, or a text that a person answered for did. */
export function isOutdated(entry: Entry, placed: Placed): boolean {
  const source = shortHash(sourceOf(placed.namespace, placed.key) ?? '');
  return entry.sourceHash !== source || (entry.state !== 'draft-machine' && isVoid(entry, placed));
}

/** The weakest of several; nothing at all is a draft. */
export function weakest(states: Iterable<ReviewStep>): ReviewStep {
  const places = [...states].map((state) => reviewSteps.indexOf(state));
  return reviewSteps[places.length === 0 ? 0 : Math.min(...places)] ?? 'draft-machine';
}

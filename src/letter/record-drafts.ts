// A language's texts and its record arrive; the record with every new draft by a computer leaves.
import type { Namespace } from './english.js';
import {
  type Act,
  entryOf,
  hashesOf,
  isVoid,
  type Placed,
  type TranslationRecord,
} from './record.js';
import { shortHash } from './short-hash.js';
import { sourceOf } from './source-of.js';

/** Whom the record names for a draft that no person answers for. */
const computer = 'computer draft';

/**
 * Enters texts that nobody answers for yet as drafts. What a person answered for stays, even where it is void by
 * now; a draft whose English source changed while its own text did not stays void, so that it shows as outdated.
 * @param date ISO date of new drafts.
 */
export function recordDrafts(
  record: TranslationRecord,
  texts: readonly Placed[],
  date: string,
): readonly Act[] {
  const answered = texts.flatMap((placed) => {
    const entry = entryOf(record, placed.namespace, placed.key);
    const redrafted =
      entry?.state === 'draft-machine' &&
      isVoid(entry, placed) &&
      entry.targetHash !== shortHash(placed.text);
    if (entry === null || redrafted)
      return [
        {
          placed,
          by: { state: 'draft-machine' as const, who: computer, credential: null, date },
          hashes: hashesOf(placed),
        },
      ];
    const { sourceHash, targetHash, ...by } = entry;
    return [{ placed, by, hashes: `${sourceHash} ${targetHash}` }];
  });
  return groupActs(answered);
}

/** Texts of which this program holds no English: nothing could be recorded of what they were translated from. */
export function withoutSource(texts: readonly Placed[]): readonly Placed[] {
  return texts.filter(({ namespace, key }) => sourceOf(namespace, key) === null);
}

type Answered = {
  readonly placed: Pick<Placed, 'namespace' | 'key'>;
  readonly by: Omit<Act, 'messages'>;
  readonly hashes: string;
};

/** One act for each person, state and day, in the order of the catalogue. */
export function groupActs(answered: readonly Answered[]): readonly Act[] {
  const acts = new Map<string, Omit<Act, 'messages'> & { messages: Messages }>();
  for (const { placed, by, hashes } of answered) {
    const key = JSON.stringify([by.state, by.who, by.credential, by.date]);
    const act = acts.get(key) ?? { ...by, messages: {} };
    const own = act.messages[placed.namespace] ?? {};
    own[placed.key] = hashes;
    act.messages[placed.namespace] = own;
    acts.set(key, act);
  }
  return [...acts.values()].sort((one, other) => one.date.localeCompare(other.date));
}
type Messages = Record<string, Record<string, string>>;

/** Every text of the namespaces that patients read, in the order of their files. */
export function placedTexts(
  files: Readonly<Record<string, unknown>>,
  namespaces: readonly Namespace[],
): readonly Placed[] {
  return namespaces.flatMap((namespace) =>
    Object.entries((files[namespace] ?? {}) as Record<string, string>).map(([key, text]) => ({
      namespace,
      key,
      text,
    })),
  );
}

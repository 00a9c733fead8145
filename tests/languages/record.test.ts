// A signature holds for two texts: the English one and its translation. When either changes, it is void.
import { describe, expect, it } from 'vitest';
import { composeLetter, readLanguage, shortHash } from '../../src/letter/index.js';
import { hashesOf, type ReviewStep, readRecord, stateOf } from '../../src/letter/record.js';
import { recordDrafts, withoutSource } from '../../src/letter/record-drafts.js';
import { sourceOf } from '../../src/letter/source-of.js';
import { englishFiles, letterOf } from '../letter/fixtures.js';
import { everySaid } from '../letter/read-content.js';

// Test vectors of the FNV-1a 32-bit hash: draft-eastlake-fnv, appendix C (from memory).
describe('the short hash', () => {
  it.each([
    ['', '811c9dc5'],
    ['a', 'e40c292c'],
    ['foobar', 'bf9cf968'],
  ])('of "%s" is %s', (text, hash) => {
    expect(shortHash(text)).toBe(hash);
  });
});

const title = { namespace: 'letter', key: 'title', text: 'Wyniki badania żelaza' } as const;
const actFor = (state: ReviewStep, hashes: string, credential: string | null = 'translator') => ({
  state,
  who: 'Ola Invented',
  credential,
  date: '2026-11-20',
  messages: { letter: { title: hashes } },
});
function recordOf(...acts: object[]) {
  const read = readRecord('pl', { acts });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

describe('a record', () => {
  it.each(['draft-machine', 'translated', 'revised', 'signed'] as const)(
    'says %s while both texts stand',
    (state) => {
      expect(stateOf(recordOf(actFor(state, hashesOf(title))), title)).toBe(state);
    },
  );

  it('is void when the English text has changed since', () => {
    const [, target] = hashesOf(title).split(' ');
    const stale = `${shortHash('Another title')} ${target}`;
    expect(stateOf(recordOf(actFor('signed', stale)), title)).toBe('draft-machine');
  });

  it('is void when the translation has changed since', () => {
    const record = recordOf(actFor('signed', hashesOf(title)));
    expect(stateOf(record, { ...title, text: 'Wyniki badania' })).toBe('draft-machine');
  });

  it('says draft of a message that it does not know', () => {
    expect(stateOf(recordOf(), title)).toBe('draft-machine');
  });

  it('is refused when a person without a credential answers for a message', () => {
    expect(readRecord('pl', { acts: [actFor('signed', hashesOf(title), null)] }).ok).toBe(false);
  });

  it('measures every plural form against the last English form', () => {
    expect(sourceOf('letter', 'gap.zinc_few')).toBe(sourceOf('letter', 'gap.zinc_other'));
    expect(sourceOf('letter', 'gap.zinc_one')).not.toBe(sourceOf('letter', 'gap.zinc_other'));
  });
});

describe('new drafts', () => {
  it('are entered for what nobody answers for, and what a person answered for stays', () => {
    const greeting = {
      namespace: 'letter',
      key: 'greeting.unnamed',
      text: 'Dzień dobry,',
    } as const;
    const acts = recordDrafts(
      recordOf(actFor('signed', hashesOf(title))),
      [title, greeting],
      '2026-11-25',
    );
    expect(acts.map(({ state, messages }) => [state, Object.keys(messages.letter ?? {})])).toEqual([
      ['signed', ['title']],
      ['draft-machine', ['greeting.unnamed']],
    ]);
  });

  it('stay outdated until their own text is written again', () => {
    const [, target] = hashesOf(title).split(' ');
    const stale = `${shortHash('Another title')} ${target}`;
    const record = recordOf(actFor('draft-machine', stale, null));
    const again = recordDrafts(record, [title], '2026-11-25');
    expect(again[0]?.messages.letter?.title).toBe(stale);
    const redrafted = recordDrafts(record, [{ ...title, text: 'Inny tytuł' }], '2026-11-25');
    expect(redrafted[0]?.messages.letter?.title).toBe(hashesOf({ ...title, text: 'Inny tytuł' }));
  });

  it('need an English text to be recorded beside', () => {
    const stranger = { ...title, key: 'no-such-message' };
    const few = { ...title, key: 'gap.calcium_few' };
    expect(withoutSource([title, stranger, few])).toEqual([stranger]);
  });
});

/** English said to be Polish, signed as far as `signed` allows. */
function signedLanguage(isSigned: (key: string) => boolean) {
  const files = englishFiles();
  const messages = (['letter', 'foods', 'fridge'] as const).flatMap((namespace) =>
    Object.entries(files[namespace] as Record<string, string>).map(([key, text]) => ({
      namespace,
      key,
      text,
    })),
  );
  const acts = messages
    .filter(({ key }) => isSigned(key))
    .map((placed) => ({
      ...actFor('signed', ''),
      messages: { [placed.namespace]: { [placed.key]: hashesOf(placed) } },
    }));
  const meta = { ...(files.meta as object), tag: 'fil', intl: 'en', reviewState: 'draft-machine' };
  const read = readLanguage('fil', { ...files, meta, record: { acts } });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

describe('a letter', () => {
  const pattern = 'iron-deficiency-anaemia' as const;
  const bands = (isSigned: (key: string) => boolean) => {
    const made = composeLetter(letterOf({ pattern, language: signedLanguage(isSigned) }));
    return made.ok ? made.value.bands.filter(({ key }) => key === 'band.translation') : [];
  };
  const made = composeLetter(letterOf({ pattern, language: signedLanguage(() => true) }));
  const usedKeys = made.ok
    ? [
        'document-title',
        ...everySaid(made.value).flatMap(({ key }) => key.replace(/^foods:/, '').split(' ')),
      ]
    : [];

  it('carries the warning in both languages while one message of it is unsigned', () => {
    const unsigned = bands((key) => key !== 'summary.heading');
    expect(unsigned.map(({ lang }) => lang)).toEqual([null, 'en']);
  });

  it('carries no warning when every message of it is signed', () => {
    expect(bands(() => true)).toEqual([]);
    expect(bands((key) => usedKeys.includes(key))).toEqual([]);
  });

  it('is refused with the message and its file where only signed translations are wanted', () => {
    const options = { signedOnly: true };
    const language = signedLanguage((key) => key !== 'help.heading');
    const refused = composeLetter(letterOf({ pattern, language, options }));
    expect(refused.ok).toBe(false);
    const [problem] = refused.ok ? [] : refused.problems;
    expect(problem?.code).toBe('translation-unsigned');
    expect(problem?.place).toMatchObject({
      file: 'locales/fil/letter.json',
      field: 'help.heading',
    });
    expect(
      composeLetter(letterOf({ pattern, language: signedLanguage(() => true), options })).ok,
    ).toBe(true);
  });

  it('in English needs no signature', () => {
    expect(composeLetter(letterOf({ pattern, options: { signedOnly: true } })).ok).toBe(true);
  });
});

// A letter's content arrives; its sentences in the order they are read leave.

import type { Content, Said } from '../../src/letter/content.js';
import { composeLetter } from '../../src/letter/index.js';
import type { LetterInput } from '../../src/letter/letter-input.js';

export function compose(input: LetterInput): Content {
  const made = composeLetter(input);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const isSaid = (value: object): value is Said =>
  'key' in value && 'text' in value && typeof value.text === 'string';

/** Every message of the letter, wherever it stands. */
export function everySaid(value: unknown): readonly Said[] {
  if (Array.isArray(value)) return value.flatMap(everySaid);
  if (typeof value !== 'object' || value === null) return [];
  return isSaid(value) ? [value] : Object.values(value).flatMap(everySaid);
}

export const plain = (text: string) => text.replace(/[\u2066-\u2069]/g, '');

/** Words of the letter as paper carries them: headings and result lines too, no picture descriptions. */
export function printed(content: Content): readonly string[] {
  const { running, results, picture, ...rest } = content;
  const rows = results.rows.map(({ line, trend, ...row }) => row);
  const scene = picture === null ? [] : [picture.heading, picture.paragraphs];
  return everySaid([
    rest,
    results.heading,
    results.howToRead,
    rows,
    results.notMeasured,
    scene,
  ]).map(({ text }) => plain(text));
}

const notProse =
  /^(about\.|greeting\.|value\.(with|without|guide)|result\.[a-z-]+\.name|contact\.(phone|hours)|signature|running|line\.|trend\.|foods:|.*heading|title|document-title|food\.list|picture\.(.*\.)?(store|carriers|goods|reuse|title|described))/;

/** Sentences that readability is counted on, with their isolates: no headings, names, values, addresses. */
export function spokenProse(content: object): readonly string[] {
  return everySaid(content)
    .filter(({ key }) => !notProse.test(key))
    .map(({ text }) => text);
}

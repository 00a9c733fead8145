// The example files arrive through every earlier room; every letter they can make leaves, in one language, as content and as blocks.
import type { Content } from '../../src/letter/content.js';
import {
  composeEasyRead,
  composeLetter,
  type Language,
  type LetterInput,
} from '../../src/letter/index.js';
import type { LetterDocument } from '../../src/render/block.js';
import { analogies } from '../../src/terms.js';
import { examples } from '../letter/examples.js';
import { renderMarkup } from '../../src/render/markup.js';
import { readMarkup } from '../../src/render/read-markup.js';
import { documentOf, shippedTemplate } from '../render/fixture.js';

export type Letter = {
  /** Example and form, such as 'heavy-periods, bakery'. */
  readonly name: string;
  readonly language: string;
  readonly easyRead: boolean;
  readonly input: LetterInput;
  /** What the usual form, or the easy-read form, is told with. */
  readonly content: Content | EasyContent;
  readonly document: LetterDocument;
};

type EasyContent = Extract<ReturnType<typeof composeEasyRead>, { ok: true }>['value'];

const read = await examples();

/** Every picture in words, none, and easy read. */
function formsOf(everyForm: boolean): readonly Form[] {
  const plain: readonly Form[] = analogies.map((analogy) => ({
    name: analogy,
    options: { analogy, easyRead: false },
  }));
  if (!everyForm) return plain.slice(0, 1);
  const bare: Form = { name: 'no picture', options: { analogy: 'off', easyRead: false } };
  const easy: Form = { name: 'easy read', options: { analogy: 'off', easyRead: true } };
  return [...plain, bare, easy];
}

type Form = {
  readonly name: string;
  readonly options: Pick<LetterInput['options'], 'analogy' | 'easyRead'>;
};

/** @param everyForm All forms of the letter, or the usual one only. */
export function lettersIn(language: Language, everyForm: boolean): readonly Letter[] {
  return read.flatMap(({ name, input }) =>
    formsOf(everyForm).map((form) => {
      const own = { ...input, language, options: { ...input.options, ...form.options } };
      const content = form.options.easyRead ? composeEasyRead(own) : composeLetter(own);
      if (!content.ok) throw new Error(`${name}: ${JSON.stringify(content.problems)}`);
      return {
        name: `${name.replace('.json', '')}, ${form.name}`,
        language: language.tag,
        easyRead: form.options.easyRead,
        input: own,
        content: content.value,
        document: 'groups' in content.value ? easyOf(content.value) : documentOf(content.value),
      };
    }),
  );
}

/** Through the shipped template of the easy-read letter. */
function easyOf(content: EasyContent): LetterDocument {
  const markup = renderMarkup(shippedTemplate('easy-read'), content);
  const document = markup.ok ? readMarkup(markup.value, 'easy-read') : markup;
  if (!document.ok) throw new Error(JSON.stringify(document.problems));
  return document.value;
}

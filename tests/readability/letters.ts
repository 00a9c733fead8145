// The example files arrive through every earlier room; every letter they can make leaves, in one language, as content and as blocks.
import type { Content } from '../../src/letter/content.js';
import { composeLetter, type Language, type LetterInput } from '../../src/letter/index.js';
import type { LetterDocument } from '../../src/render/block.js';
import { analogies } from '../../src/terms.js';
import { examples } from '../letter/examples.js';
import { documentOf } from '../render/fixture.js';

export type Letter = {
  /** Example and form, such as 'heavy-periods, bakery'. */
  readonly name: string;
  readonly language: string;
  readonly easyRead: boolean;
  readonly input: LetterInput;
  readonly content: Content;
  readonly document: LetterDocument;
};

const read = await examples();

/** Every picture in words, and none. Easy read is another letter, held to its own limits beside it. */
function formsOf(everyForm: boolean): readonly Form[] {
  const plain: readonly Form[] = analogies.map((analogy) => ({
    name: analogy,
    options: { analogy, easyRead: false },
  }));
  if (!everyForm) return plain.slice(0, 1);
  const bare: Form = { name: 'no picture', options: { analogy: 'off', easyRead: false } };
  return [...plain, bare];
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
      const content = composeLetter(own);
      if (!content.ok) throw new Error(`${name}: ${JSON.stringify(content.problems)}`);
      return {
        name: `${name.replace('.json', '')}, ${form.name}`,
        language: language.tag,
        easyRead: form.options.easyRead,
        input: own,
        content: content.value,
        document: documentOf(content.value),
      };
    }),
  );
}

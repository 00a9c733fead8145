// Every English letter passes the gate of plain language, and the gate itself stops what it should.
import { describe, expect, it } from 'vitest';
import { english } from '../letter/fixtures.js';
import { frenchSyllables, kandelMoles, lix, spanishSyllables, szigrisztPazos } from './formulas.js';
import { judge, unexplained } from './judge.js';
import { lettersIn } from './letters.js';
import { englishVerdicts } from './report.js';

describe('the gate', () => {
  it('lets every English letter of the examples pass, in every form', () => {
    const verdicts = englishVerdicts();
    expect(verdicts.length).toBeGreaterThan(100);
    expect(verdicts.filter(({ faults }) => faults.length > 0)).toEqual([]);
  });

  it('stops a long sentence, a long paragraph, a banned word and a term without its meaning', () => {
    const [letter] = lettersIn(english, false);
    if (letter === undefined || !('summary' in letter.content)) throw new Error('no letter');
    const words =
      'This is a rather long and winding sentence that goes on and on until nobody at all can follow it now.';
    const told = { key: 'summary.unclear', text: words };
    const bad = {
      ...letter,
      content: { ...letter.content, summary: { ...letter.content.summary, sentences: [told] } },
      document: {
        ...letter.document,
        blocks: [
          {
            kind: 'paragraph' as const,
            look: 'body' as const,
            runs: [
              {
                text: 'Abnormal. Your TIBC. It is. So.',
                strong: false,
                lang: null,
                isolate: null,
                href: null,
              },
            ],
          },
        ],
      },
    };
    expect(judge(bad).faults).toEqual([
      'longest sentence 21 is over 20',
      'sentences in a paragraph 4 is over 3',
      'banned word "Abnormal"',
      '"TIBC" is not explained at first use',
    ]);
  });

  it('takes a term in brackets after everyday words, and only at its first use', () => {
    expect(unexplained(['Iron store (ferritin)', 'Your ferritin is low.'])).toEqual([]);
    expect(unexplained(['Your ferritin is low.', 'Iron store (ferritin)'])).toEqual(['ferritin']);
    expect(unexplained(['Iron load (transferrin saturation)'])).toEqual([]);
  });
});

/** Texts counted and computed by hand from the published formulas. */
describe('the formulas of other languages', () => {
  it('Szigriszt-Pazos and its syllables as by hand', () => {
    expect(
      ['clínica', 'hierro', 'reserva', 'llame', 'día', 'sangre'].map(spanishSyllables),
    ).toEqual([3, 2, 3, 2, 2, 2]);
    expect(
      szigrisztPazos(['Su reserva de hierro es baja. Llame a la clínica esta semana.']),
    ).toBeCloseTo(86.6183, 4);
  });

  it('Kandel-Moles and its mute endings as by hand', () => {
    expect(['prise', 'fer', 'semaine', 'clinique'].map(frenchSyllables)).toEqual([1, 1, 2, 2]);
    expect(kandelMoles(['Le fer est bas. Venez nous voir lundi matin.'])).toBeCloseTo(113.1583, 4);
  });

  it('LIX as by hand, with letters beyond ASCII', () => {
    expect(
      lix(['Ditt järn är lågt. Ring oss denna vecka. Vi pratar om behandlingen.']),
    ).toBeCloseTo(12.3333, 4);
  });
});

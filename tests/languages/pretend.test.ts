// A language nobody has yet, in a script that is there: its folder alone makes it whole.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectedMessages, patientNamespaces, readLanguage } from '../../src/letter/index.js';
import { familiesFor } from '../../src/render/pdf/faces.js';

const meta = {
  tag: 'cy',
  name: 'Cymraeg',
  englishName: 'Welsh',
  dir: 'ltr',
  script: 'Latn',
  reviewState: 'draft-machine',
};

describe('a pretend language', () => {
  const files = Object.fromEntries(
    patientNamespaces.map((namespace) => [
      namespace,
      Object.fromEntries(
        [...expectedMessages(namespace, 'cy')].map(([key, text]) => [key, `[${text}]`]),
      ),
    ]),
  );

  // CLDR 48, plural rules: Welsh has all six forms.
  it('is read from its own folder alone, with all plural forms of its own', () => {
    const read = readLanguage('cy', { meta, ...files });
    expect(read.ok ? [] : read.problems).toEqual([]);
    expect(Object.keys(files.letter ?? {}).filter((key) => key.startsWith('gap.zinc_'))).toEqual(
      ['zero', 'one', 'two', 'few', 'many', 'other'].map((form) => `gap.zinc_${form}`),
    );
    if (read.ok) expect(read.value.stateOf('letter', 'title')).toBe('draft-machine');
  });

  it('has faces by its script', () => {
    expect(familiesFor('cy').map(({ name }) => name)).toEqual(['noto-sans']);
  });

  it('is named nowhere in the program: no tag of a shipped language stands in its sources', () => {
    for (const file of ['src/letter/language.ts', 'src/letter/english.ts', 'src/app/kit.ts'])
      expect(readFileSync(file, 'utf8').replace(/^\s*(\/\/|\*).*$/gm, '')).not.toMatch(
        /'(?:ar|bn|fa|fil|hi|pl|ur|zh-Hans)'/,
      );
  });
});

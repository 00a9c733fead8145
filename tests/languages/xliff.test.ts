// A language goes out to translators and comes back; the xliff package, which knows nothing of this project, reads it too.
import { describe, expect, it } from 'vitest';
import { xliff2js } from 'xliff';
import { keepTranslation } from '../../src/app/languages/keep-translation.js';
import { readXliff } from '../../src/app/languages/read-xliff.js';
import { shelfOf } from '../../src/app/languages/shelf.js';
import { takeIn } from '../../src/app/languages/take-in.js';
import { unitsOf } from '../../src/app/languages/units.js';
import { writeXliff } from '../../src/app/languages/write-xliff.js';
import { entryOf, readRecord, translatedNamespaces } from '../../src/letter/index.js';
import { languageFilesOf, translatedTags } from './folders.js';

const by = { who: 'Ola Invented', credential: 'translator', date: '2026-11-20' };
const unfinished = {
  meta: {
    tag: 'sw',
    name: 'Kiswahili',
    englishName: 'Swahili',
    dir: 'ltr',
    script: 'Latn',
    dates: Array.from({ length: 12 }, (_, month) => `{{day}} [month ${month + 1}] {{year}}`),
    reviewState: 'draft-machine',
  },
  letter: { title: 'Kipimo <cha> "damu" & chuma', 'greeting.named': 'Habari {{name}},' },
  glossary: [
    {
      concept: 'iron',
      source: 'iron',
      target: 'madini ya chuma',
      avoid: ['pasi'],
      note: 'mineral',
    },
  ],
};
const shelf = shelfOf('sw', unfinished);
const units = unitsOf(shelf);
const xml = writeXliff('sw', units);

function segmentsOf(text: string) {
  const read = readXliff('sw.xlf', text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.segments;
}

/** The exported file with one unit's target and state set, as a translator's tool would write them. */
function answered(key: string, target: string, state: string): string {
  const unit = new RegExp(
    `(<unit id="${key.replaceAll('.', '\\.')}"[^>]*>[\\s\\S]*?<segment state=")[^"]*("[^>]*>\\n<source[^\\n]*\\n)(?:<target[^\\n]*\\n)?`,
  );
  expect(xml).toMatch(unit);
  return xml.replace(unit, `$1${state}$2<target>${target}</target>\n`);
}

describe('an exported file', () => {
  it('is read by the xliff package with every source, target and note', async () => {
    const outside = await xliff2js(xml, { inlineAsString: true });
    expect(outside.sourceLanguage).toBe('en');
    expect(outside.targetLanguage).toBe('sw');
    for (const { namespace, key, target, note } of units) {
      const unit = outside.resources[namespace]?.[key];
      expect(unit?.note ?? null, key).toBe(note);
      if (target !== '' && !target.includes('{{')) expect(unit?.target).toBe(target);
    }
    expect(Object.keys(outside.resources)).toEqual([...translatedNamespaces]);
  });

  it('keeps each variable as an inline code that names it', () => {
    const segment = segmentsOf(xml).find(({ key }) => key === 'greeting.named');
    expect(segment).toMatchObject({ source: 'Dear {{name}},', target: 'Habari {{name}},' });
    expect(xml).toContain('equiv="{{name}}"');
  });

  it('carries the glossary where its words stand, limits for labels, and the state', () => {
    const unit = xml.slice(xml.indexOf('<unit id="title">'));
    expect(unit.slice(0, unit.indexOf('</unit>'))).toContain(
      '<gls:term>iron</gls:term><gls:translation>madini ya chuma</gls:translation><gls:definition>mineral Not: pasi.</gls:definition>',
    );
    expect(xml).toMatch(/<unit id="line\.usual" slr:sizeRestriction="\d+">/);
    expect(xml).toContain('state="initial" subState="ironleaf:draft-machine"');
  });

  it.each(translatedTags)('of %s comes back as it went, byte for byte', (tag) => {
    const own = shelfOf(tag, languageFilesOf(tag));
    const all = unitsOf(own);
    const segments = segmentsOf(writeXliff(tag, all));
    expect(segments.map(({ source, target }) => [source, target ?? ''])).toEqual(
      all.map(({ source, target }) => [source, target]),
    );
    expect(takeIn('x', segments, all, 'signed').taken).toEqual([]);
    const finished = segments.map((segment) => ({ ...segment, state: 'translated' }));
    const { taken, refused } = takeIn(
      'x',
      finished.filter(({ target }) => target !== null),
      all,
      'translated',
    );
    expect(refused).toEqual([]);
    const { files } = keepTranslation(own, taken, by);
    for (const [namespace, messages] of Object.entries(files))
      expect(JSON.stringify(messages)).toBe(JSON.stringify(own.files[namespace]));
  });
});

describe('what is taken in', () => {
  it('is a new text, recorded with the name, the credential and the day', () => {
    const text = answered('greeting.unnamed', 'Habari mgonjwa,', 'translated');
    const { taken, untouched, refused } = takeIn('sw.xlf', segmentsOf(text), units, 'signed');
    expect(refused).toEqual([]);
    expect(taken.map(({ unit, text: own }) => [unit.key, own])).toEqual([
      ['greeting.unnamed', 'Habari mgonjwa,'],
    ]);
    expect(untouched).toBe(units.length - 1);
    const { files, acts } = keepTranslation(shelf, taken, by);
    expect(files.letter).toEqual({
      ...unfinished.letter,
      'greeting.unnamed': 'Habari mgonjwa,',
    });
    const record = readRecord('sw', { acts });
    const entry = record.ok ? entryOf(record.value, 'letter', 'greeting.unnamed') : null;
    expect(entry).toMatchObject({ ...by, state: 'translated' });
  });

  // XLIFF 2.0, section 4.7.1: initial, translated, reviewed, final.
  it.each([
    ['translated', 'signed', 'translated'],
    ['reviewed', 'signed', 'revised'],
    ['final', 'signed', 'signed'],
    ['final', 'revised', 'revised'],
    ['initial', 'signed', 'translated'],
  ] as const)('in state %s by someone who answers for %s counts as %s', (state, claim, counts) => {
    const text = answered('title', 'Kipimo cha damu', state);
    expect(takeIn('sw.xlf', segmentsOf(text), units, claim).taken[0]?.state).toBe(counts);
  });
});

describe('what is refused', () => {
  it.each([
    ['greeting.named', 'Habari,', /fill/],
    ['greeting.named', 'Habari {{jina}},', /fill/],
    ['title', '  ', /empty/],
    ['title', 'Kipimo \u202Ecuma', /control/],
    ['line.usual', 'x'.repeat(33), /label/],
  ])('%s as "%s" is, with the reason', (key, target, reason) => {
    const { taken, refused } = takeIn(
      'f',
      segmentsOf(answered(key, target, 'final')),
      units,
      'signed',
    );
    expect(taken).toEqual([]);
    expect(refused.map(({ place, cannot }) => `${place.field} ${cannot}`)).toEqual([
      expect.stringMatching(reason),
    ]);
    expect(refused[0]?.place.field).toBe(`letter ${key}`);
  });

  it('is a translation of an English text that has changed since', () => {
    const stale = answered('title', 'Kipimo', 'final').replace(
      'Your iron blood test results',
      'Old',
    );
    const { taken, refused } = takeIn('f', segmentsOf(stale), units, 'signed');
    expect(taken).toEqual([]);
    expect(refused[0]?.cannot).toMatch(/older English text/);
  });

  it.each([
    ['a file that is cut off', (text: string) => text.slice(0, text.length / 2)],
    ['another version', (text: string) => text.replace('version="2.0"', 'version="1.2"')],
    ['another source language', (text: string) => text.replace('srcLang="en"', 'srcLang="fr"')],
    [
      'a document type',
      (text: string) => text.replace('<xliff', '<!DOCTYPE x [<!ENTITY a "b">]><xliff'),
    ],
    [
      'a unit twice',
      (text: string) => text.replace('<unit id="title_child">', '<unit id="title">'),
    ],
    ['no XML', () => 'title = Kipimo'],
  ])('is %s, as a whole', (_, spoil) => {
    expect(readXliff('f', spoil(xml)).ok).toBe(false);
  });
});

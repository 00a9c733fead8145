// The letter as facts: what must stand in it, what may never, and when it is not made at all.
import { describe, expect, it } from 'vitest';
import type { GradedResult } from '../../src/interpret/interpretation.js';
import { composeLetter } from '../../src/letter/index.js';
import {
  analogies,
  holdTiers,
  type Level,
  type Pattern,
  patterns,
  type Position,
} from '../../src/terms.js';
import { casesOf } from './cases.js';
import { examples } from './examples.js';
import { food, graded, letterOf, resultsOf } from './fixtures.js';
import { compose, everySaid, plain, printed } from './read-content.js';

const everyLetter = [...casesOf(), ...(await examples())];

const textOf = (input: Parameters<typeof compose>[0]) => printed(compose(input)).join('\n');
const low = 'iron-deficiency-anaemia' as const;

describe('every letter', () => {
  // Words that alarm, blame or mislead: Cox and Fritz 2022 BMJ 377:e066720; NHS digital service manual, A to Z;
  // Zikmund-Fisher and others 2007 on labels of results.
  const banned =
    /\b(normal|normally|abnormal|critical|dangerous|good|bad|fail(ed|ure)?|poor|denies|refuse[sd]?|complian(t|ce)|should|chronic|deteriorat\w+|sanitary|hygiene|feminine|1 in \d+)\b/i;

  it.each(everyLetter)('$name holds no banned word', ({ input }) => {
    for (const { text } of everySaid(compose(input))) expect(text).not.toMatch(banned);
  });

  it.each(everyLetter)('$name has words in every section it has', ({ input }) => {
    const content = compose(input);
    const sections = [
      content.about,
      content.summary.sentences,
      content.yourSteps.steps,
      content.ourSteps.steps,
      content.results.rows,
      content.meaning.paragraphs,
      content.help.groups,
      content.choices.paragraphs,
      content.contact.lines,
      content.cautions,
      content.signature,
    ];
    for (const section of sections) expect(section.length).toBeGreaterThan(0);
    for (const { text } of everySaid(content)) expect(plain(text).trim()).not.toBe('');
  });

  it.each(casesOf())('$name opens with meaning, then urgency, then the next step', ({ input }) => {
    const [first, ...others] = compose(input).summary.sentences.map(({ key }) => key);
    expect(first).toBe(`summary.${input.interpretation.pattern.main}`);
    expect(others.at(-1)).toMatch(/^summary\.next\./);
    expect(others.length).toBeLessThanOrEqual(2);
  });

  it.each(casesOf())('$name says whom to call and by which date', ({ input }) => {
    const { yourSteps } = compose(input);
    const last = plain(yourSteps.steps.at(-1)?.text.text ?? '');
    expect(last).toContain('555-0142');
    const { tier } = input.interpretation.hold;
    const urgent = tier === 'same-day' || tier === 'emergency';
    expect(last).toContain(urgent ? '555-0142 now' : '11 December 2026');
  });

  // Textbooks disagree on the order in which values fall, so no letter states one.
  it.each(everyLetter)('$name states no order in which values fall', ({ input }) => {
    expect(textOf(input)).not.toMatch(
      /\bfirst\b.*\bthen\b|empties first|falls? first|before your (iron|blood)/i,
    );
  });
});

describe('a result', () => {
  const odd = [
    graded(['haemoglobin', '10,8', 'g/dL', '11,5 - 15,5', 'a-little-below', 'low']),
    graded(['ferritin', '<5', 'µg/L', '30–400', 'well-below', 'low']),
    graded(['transferrin-saturation', '6.0', '%', null, 'well-below', 'low']),
  ];

  it('keeps value, unit and interval byte for byte, in isolates that run left to right', () => {
    const content = compose(letterOf({ pattern: low, results: odd }));
    for (const { copied } of odd) {
      const row = content.results.rows.find(({ value }) => value === copied.value);
      expect(row).toMatchObject({
        value: copied.value,
        unit: copied.unit,
        interval: copied.interval,
      });
      expect(row?.valueLine.text).toContain(`\u2066${copied.value} ${copied.unit}\u2069`);
      if (copied.interval !== null)
        expect(row?.valueLine.text).toContain(`\u2066${copied.interval}\u2069`);
    }
  });

  it('labels the ends of its line as the laboratory printed them', () => {
    const [first, second] = compose(letterOf({ pattern: low, results: odd })).results.rows;
    expect(first?.line?.labels).toMatchObject({ value: '10,8', low: '11,5', high: '15,5' });
    expect(second?.line?.labels).toMatchObject({ value: '<5', low: '30', high: '400' });
  });

  it('says "less than" in words beside the sign', () => {
    const row = compose(letterOf({ pattern: low, results: odd })).results.rows[1];
    expect(row?.meaning.map(({ key }) => key)).toContain('value.less');
  });

  it.each(patterns)('of %s has what it is, where it lies and what that means', (pattern) => {
    for (const row of compose(letterOf({ pattern })).results.rows) {
      expect(row.whatItIs.text).not.toBe('');
      expect(row.verdict.key).toBe(`verdict.${row.position}`);
      const silent =
        pattern === 'post-iron-dose-artefact' || pattern === 'discordant-or-implausible';
      if (row.line !== null && !silent) expect(row.meaning.length).toBeGreaterThan(0);
    }
  });

  it('says both when laboratory and guideline differ', () => {
    const rows = compose(letterOf({ pattern: 'early-low-intake' })).results.rows;
    const ferritin = rows.find(({ analyte }) => analyte === 'ferritin');
    expect(ferritin?.verdict.key).toBe('verdict.in-range');
    expect(ferritin?.meaning.map(({ key }) => key)).toContain('disagree.usual.low');
  });

  it('that is doubtful is neither placed nor explained', () => {
    const results = resultsOf('discordant-or-implausible').map((result) =>
      result.analyte === 'ferritin'
        ? { ...result, doubt: { kind: 'unit' as const, question: 'ug/L or ng/dL?' } }
        : result,
    );
    const rows = compose(letterOf({ pattern: 'discordant-or-implausible', results })).results.rows;
    const ferritin = rows.find(({ analyte }) => analyte === 'ferritin');
    expect(ferritin).toMatchObject({ position: null, line: null, trend: null, meaning: [] });
    expect(ferritin?.verdict.key).toBe('verdict.doubtful');
  });

  it('tells of a picture only what is drawn', () => {
    const told = (pattern: Pattern) =>
      compose(letterOf({ pattern })).picture?.figure.description.text;
    expect(told('iron-deficiency-anaemia')).toBe(
      'A drawing. The drawer holds few spares. Many trays are nearly empty. There are few shirts.',
    );
    expect(told('iron-deficiency-without-anaemia')).toMatch(/few spares/);
    expect(told('iron-deficiency-without-anaemia')).not.toMatch(/few shirts/);
    const words = (pattern: Pattern) => textOf(letterOf({ pattern }));
    expect(words('iron-deficiency-anaemia')).toMatch(/There may be fewer shirts/);
    expect(words('iron-deficiency-without-anaemia')).not.toMatch(/fewer shirts/);
  });

  it('says at once that the iron store is low where ferritin alone was measured', () => {
    const store = (value: string, position: Position, level: Level) =>
      graded(['ferritin', value, 'ug/L', null, position, level]);
    const opening = (...results: readonly GradedResult[]) =>
      compose(letterOf({ pattern: 'unclear', results })).summary.sentences[0]?.key;
    const count = graded(['haemoglobin', '130', 'g/L', null, 'in-range', 'usual']);
    expect(opening(store('8', 'well-below', 'low'))).toBe('summary.unclear.store-low');
    expect(opening(store('8', 'well-below', 'low'), count)).toBe('summary.unclear');
    expect(opening(store('22', 'a-little-below', 'low'))).toBe('summary.unclear');
    expect(opening(store('90', 'in-range', 'usual'))).toBe('summary.unclear');
  });

  it('that was not measured is named', () => {
    const results = resultsOf('unclear').filter(({ analyte }) => analyte === 'mcv');
    const { notMeasured } = compose(letterOf({ pattern: 'unclear', results })).results;
    expect(notMeasured.map(({ key }) => key)).toEqual([
      'not-measured.haemoglobin',
      'not-measured.ferritin',
    ]);
  });
});

describe('a held letter', () => {
  it.each(holdTiers)('at tier %s is made only when it may be', (tier) => {
    const held = tier === 'same-day' || tier === 'emergency';
    const made = composeLetter(letterOf({ pattern: low, tier }));
    expect(made.ok).toBe(!held);
    if (!made.ok) expect(made.problems.map(({ code }) => code)).toEqual(['letter-held']);
  });

  it.each([
    { by: '', done: 'phoned' },
    { by: 'Dr Imre Vale', done: ' ' },
  ])('is not released without a name and what was done', (released) => {
    expect(
      composeLetter(letterOf({ pattern: low, tier: 'emergency', options: { released } })).ok,
    ).toBe(false);
  });

  it('tells nobody to wait for a date', () => {
    const released = { by: 'Dr Imre Vale', done: 'phoned' };
    const content = compose(letterOf({ pattern: low, tier: 'emergency', options: { released } }));
    expect(content.yourSteps.steps.map(({ text }) => text.key)).not.toContain('step.heard-by');
    expect(plain(content.yourSteps.steps.at(-1)?.text.text ?? '')).toMatch(/call 555-0142 now/);
  });

  it('opens with what was done and when to get help once released', () => {
    const released = { by: 'Dr Imre Vale', done: 'phoned, seen at 10:20' };
    const content = compose(letterOf({ pattern: low, tier: 'same-day', options: { released } }));
    expect(content.help.first).toBe(true);
    expect(content.picture).toBeNull();
    expect(content.released.map(({ text }) => plain(text)).join(' ')).toContain(
      'phoned, seen at 10:20',
    );
  });
});

describe('a letter about too much iron', () => {
  const raising =
    /^(food\.(kinds|list\.(meat|fish|plants|plants-and-eggs|vitamin-c|tips))|swap\.|foods:|summary\.next\.eat-for-iron|step\.eat-for-iron|tablets\.)/;

  it.each([{}, { patient: { ageMonths: 96 } }])('holds no words that raise iron', (more) => {
    const input = letterOf({ pattern: 'raised-tsat-and-ferritin', ...more });
    const withStep = {
      ...input.advice,
      steps: [
        ...input.advice.steps,
        {
          step: 'eat-for-iron',
          who: 'patient',
          by: null,
          suggested: false,
          rules: [],
          words: null,
        } as const,
      ],
    };
    const keys = everySaid(compose({ ...input, advice: withStep })).map(({ key }) => key);
    expect(keys.filter((key) => raising.test(key))).toEqual([]);
  });

  it('never shows it as money', () => {
    const options = { analogy: 'family-money' as const };
    expect(compose(letterOf({ pattern: 'raised-tsat-and-ferritin', options })).picture).toBeNull();
  });
});

describe('the picture in words', () => {
  it.each(analogies)('of the %s ends by saying what it is', (analogy) => {
    for (const pattern of patterns) {
      const { picture } = compose(letterOf({ pattern, options: { analogy } }));
      if (picture === null) continue;
      expect(picture.paragraphs.at(-1)?.[0]?.text).toMatch(/^This is only a picture\./);
    }
  });

  it.each([
    ['under five', { patient: { ageMonths: 59 } }, false],
    ['at five', { patient: { ageMonths: 60 } }, true],
    ['over five', { patient: { ageMonths: 61 } }, true],
    ['in easy read', { options: { easyRead: true } }, false],
    ['when switched off', { options: { analogy: 'off' as const } }, false],
  ])('%s is there or not as it must be', (_name, wanted, there) => {
    expect(compose(letterOf({ pattern: low, ...wanted })).picture !== null).toBe(there);
  });

  it('fills the store as the guideline sees it where the laboratory sees it as usual', () => {
    const [haemoglobin, ferritin, ...others] = resultsOf('early-low-intake');
    if (haemoglobin === undefined || ferritin === undefined) throw new Error('no results');
    const guide = {
      by: 'guideline' as const,
      low: 30,
      high: null,
      source: 'invented',
      rule: 'invented',
      highRule: null,
      position: 'a-little-below' as const,
    };
    const results = [haemoglobin, { ...ferritin, also: [guide] }, ...others];
    const { picture } = compose(letterOf({ pattern: 'early-low-intake', results }));
    expect(picture?.figure.levels.store).toBe('a-little-below');
  });
});

describe('the reader', () => {
  it.each([
    [191, /Dear parent or carer of/],
    [192, /Dear Noor Castellane/],
    [193, /Dear Noor Castellane/],
  ])('at %i months is greeted as policy says', (ageMonths, greeting) => {
    expect(
      plain(compose(letterOf({ pattern: low, patient: { ageMonths } })).greeting.text),
    ).toMatch(greeting);
  });

  it("of a child's letter is never told that the results are their own", () => {
    for (const pattern of patterns) {
      const said = textOf(letterOf({ pattern, patient: { ageMonths: 96, menstruating: null } }));
      expect(said).not.toMatch(/\byour (iron|blood|body|result|results|red|ferritin|tablets)\b/i);
      expect(said).not.toMatch(/\byou (feel|take|may feel|are well)\b/i);
    }
  });

  it('may be a young person where the clinic chooses so', () => {
    const options = { addressee: { kind: 'patient' } } as const;
    const content = compose(letterOf({ pattern: low, patient: { ageMonths: 180 }, options }));
    expect(content.title.text).toBe('Your iron blood test results');
  });

  it("of an adult's letter is not a carer", () => {
    const options = { addressee: { kind: 'carer', name: 'A Person' } } as const;
    const made = composeLetter(letterOf({ pattern: low, options }));
    expect(made.ok || made.problems[0]?.code).toBe('letter-addressee');
  });

  it.each(['male', 'unknown'] as const)('of sex %s is not told that they have periods', (sex) => {
    const said = textOf(letterOf({ pattern: low, patient: { sex, menstruating: null } }));
    expect(said).not.toMatch(/heavy periods and/);
    if (sex === 'unknown') expect(said).toContain('if you have them, heavy periods');
  });

  it.each([
    ['a woman of 76', { sex: 'female', menstruating: null }, ['over-65']],
    ['a woman whose periods have ended', { sex: 'female', menstruating: false }, []],
    ['somebody of 76 whose sex is not known', { sex: 'unknown', menstruating: null }, ['over-65']],
  ] as const)('who is %s is not told of heavy periods', (_who, patient, flags) => {
    expect(textOf(letterOf({ pattern: low, patient, flags }))).not.toMatch(/periods/);
  });

  it('who may have periods hears of them with an if', () => {
    const patient = { menstruating: null };
    const help = [{ sign: 'periods-stop-daily-life', urgency: 'soon' }] as const;
    expect(textOf(letterOf({ pattern: low, patient, advice: { help } }))).toContain(
      'if you have them, heavy periods',
    );
  });

  it('who eats fish only is not told of meat', () => {
    const input = letterOf({ pattern: low });
    const choices = [food('sardines-tin', true, false, 'fish'), food('lentils-red', false)];
    const advice = { ...input.advice, food: { ...input.advice.food, choices } };
    expect(textOf({ ...input, advice })).not.toMatch(/\bmeat\b/);
  });
});

describe('stamps', () => {
  const keysOf = (input: Parameters<typeof compose>[0]) =>
    compose(input).bands.map(({ key }) => key);

  it('say example and unchecked on the first page and on every other', () => {
    const content = compose(letterOf({ pattern: low }));
    expect(content.bands.map(({ key }) => key)).toEqual(['band.example', 'band.unchecked']);
    expect(content.running.footer.key).toBe('running.footer.example-unchecked');
  });

  it('leave when a clinician is named and the clinic is real', () => {
    const input = letterOf({
      pattern: low,
      clinic: { demo: false },
      options: { checkedBy: 'Dr Imre Vale' },
    });
    expect(keysOf(input)).toEqual([]);
    expect(compose(input).running.footer.key).toBe('running.footer');
  });

  it('say in both languages that a translation is unchecked', () => {
    const { language } = letterOf({ pattern: low });
    const draft = { ...language, tag: 'fr', stateOf: () => 'draft-machine' as const };
    const bands = compose(letterOf({ pattern: low, language: draft })).bands.slice(-2);
    expect(bands.map(({ key, lang }) => [key, lang])).toEqual([
      ['band.translation', null],
      ['band.translation', 'en'],
    ]);
  });

  it.each(['phone', 'hours', 'emergencyNumber', 'name'] as const)(
    'no letter is made without the clinic %s',
    (field) => {
      const made = composeLetter(letterOf({ pattern: low, clinic: { [field]: ' ' } }));
      expect(made.ok || made.problems.map(({ place }) => place.field)).toEqual([`clinic.${field}`]);
    },
  );
});

describe('what the trade knows, in plain words', () => {
  // Source of every row: common practice, no source.
  it.each([
    ['red cells last about three months', low, 'They last about three months.'],
    ['most of their iron is used again', low, 'Then most of their iron is used again.'],
    ['stores lie mainly in the liver', low, 'This is iron in store, mostly in the liver.'],
    [
      'low haemoglobin brings tiredness and breathlessness',
      low,
      'When it is low, people can feel tired or short of breath.',
    ],
    [
      'heavy periods and bowel bleeding are common causes',
      low,
      'Heavy periods and slow blood loss from the bowel are common causes.',
    ],
    [
      'ferritin tells most about lasting deficiency',
      low,
      'This is the clearest single sign of low iron.',
    ],
    [
      'carriers rise while the others fall in lasting deficiency',
      low,
      'The body makes more when iron is short.',
    ],
    [
      'low haemoglobin alone suggests a sudden bleed',
      'possible-recent-blood-loss',
      'A bleed not long ago can look like this.',
    ],
  ] as const)('says that %s', (_fact, pattern, sentence) => {
    // With the picture in words, the first two are told there: 'After about three months, most buttons are used again.'
    expect(textOf(letterOf({ pattern, options: { analogy: 'off' } }))).toContain(sentence);
  });
});

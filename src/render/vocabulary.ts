// Nothing arrives; the closed subset of HTML and SVG leaves: which tags, attributes and classes a letter may use.
import { isShapeName } from './look.js';
import { isPictogram, pictogramNames } from './pictures/pictogram.js';

/** Says whether a value is allowed, and names what would be. */
type Allowed = { readonly accepts: (value: string) => boolean; readonly expected: string };

type TagRule = {
  readonly classes: readonly string[];
  readonly attributes: Readonly<Record<string, Allowed>>;
};

const anything: Allowed = { accepts: () => true, expected: 'any text' };
const oneOf = (...values: readonly string[]): Allowed => ({
  accepts: (value) => values.includes(value),
  expected: values.join(' or '),
});
const matching = (pattern: RegExp, expected: string): Allowed => ({
  accepts: (value) => pattern.test(value),
  expected,
});

const lang = matching(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, 'a language tag such as en or zh-Hans');
const dir = oneOf('ltr', 'rtl');
const sign: Allowed = { accepts: isPictogram, expected: pictogramNames.join(', ') };
const number = matching(/^-?\d+(\.\d+)?$/, 'a number such as 12 or 0.5');
const shape: Allowed = { accepts: isShapeName, expected: 'a name from the table of look' };

/** Every number is separated, so that the pattern can only be read in one way and never tries twice. */
const numeral = '-?\\d+(?:\\.\\d+)?';
const command = `(?:[ML]${numeral} ${numeral}|C${numeral}(?: ${numeral}){5}|Z)`;
const pathData = new RegExp(`^${command}(?: ${command})*$`);

const plain: TagRule = { classes: [], attributes: {} };
const withClasses = (...classes: readonly string[]): TagRule => ({ classes, attributes: {} });
const drawn = (...names: readonly string[]): TagRule => ({
  classes: [],
  attributes: { class: shape, ...Object.fromEntries(names.map((name) => [name, number])) },
});

/**
 * Every tag of the subset. A class stands in `class`; where a tag takes several, each must be listed.
 * Pictures (svg and what is in it) come from the picture helper; the same table refuses anything else.
 */
const rules: Readonly<Record<string, TagRule>> = {
  article: { classes: [], attributes: { lang, dir, title: anything } },
  header: withClasses('running'),
  footer: {
    classes: ['running'],
    attributes: {
      'data-page-of': matching(
        /\{page\}.*\{pages\}|\{pages\}.*\{page\}/s,
        'text with {page} and {pages}',
      ),
    },
  },
  h1: plain,
  h2: plain,
  h3: plain,
  p: withClasses('lead', 'small', 'caption', 'label', 'value', 'address'),
  ul: withClasses('ticks'),
  ol: plain,
  li: plain,
  table: withClasses('results', 'plain'),
  caption: plain,
  thead: plain,
  tbody: plain,
  tr: plain,
  th: {
    classes: [],
    attributes: { scope: oneOf('row', 'col'), colspan: matching(/^[1-9]$/, '1 to 9') },
  },
  td: { classes: [], attributes: { colspan: matching(/^[1-9]$/, '1 to 9') } },
  aside: withClasses('summary', 'urgent', 'caution', 'band', 'plain'),
  section: { classes: ['keep', 'beside', 'wide'], attributes: { lang, dir, 'data-sign': sign } },
  figure: plain,
  figcaption: plain,
  img: {
    classes: [],
    attributes: {
      src: matching(/^data:image\/(png|svg\+xml);base64,[A-Za-z0-9+/]+=*$/, '{{sender.logo}}'),
      alt: anything,
    },
  },
  hr: withClasses('page-break'),
  strong: plain,
  bdi: { classes: [], attributes: { dir: oneOf('ltr', 'rtl', 'auto') } },
  span: { classes: [], attributes: { lang } },
  a: {
    classes: [],
    attributes: {
      href: matching(
        /^(tel:\+?[0-9]+|mailto:[^\s"<>?]+|https:\/\/[^\s"<>]+)$/,
        'tel:, mailto: or https:',
      ),
    },
  },
  svg: {
    classes: [],
    attributes: {
      viewBox: matching(/^0 0 \d+(\.\d+)? \d+(\.\d+)?$/, '"0 0 width height"'),
      role: oneOf('img'),
    },
  },
  title: plain,
  desc: plain,
  rect: drawn('x', 'y', 'width', 'height', 'rx'),
  circle: drawn('cx', 'cy', 'r'),
  line: drawn('x1', 'y1', 'x2', 'y2'),
  path: {
    classes: [],
    attributes: {
      class: shape,
      d: matching(pathData, 'M, L, C and Z with absolute numbers, one space between'),
    },
  },
  text: {
    classes: [],
    attributes: {
      class: shape,
      x: number,
      y: number,
      'font-size': number,
      'text-anchor': oneOf('start', 'middle', 'end'),
      'font-weight': oneOf('bold'),
      lang,
      direction: dir,
    },
  },
};

/** The rule of a tag; undefined when the subset has no such tag. */
function ruleOf(tag: string): TagRule | undefined {
  return Object.hasOwn(rules, tag) ? rules[tag] : undefined;
}

/** Everything wrong with one tag: one sentence each, with what would be right. */
export function faultsOfTag(
  tag: string,
  attributes: Readonly<Record<string, string>>,
): readonly { readonly cannot: string; readonly expected: string }[] {
  const rule = ruleOf(tag);
  if (rule === undefined) {
    return [{ cannot: `use the tag <${tag}>`, expected: 'a tag of the letter subset' }];
  }
  return Object.entries(attributes).flatMap(([name, value]) => {
    if (value.includes(unknownValue)) return [];
    const allowed = Object.hasOwn(rule.attributes, name) ? rule.attributes[name] : undefined;
    if (name === 'class' && allowed === undefined) return faultsOfClass(tag, rule, value);
    if (allowed === undefined) {
      const known = Object.keys(rule.attributes).join(', ');
      return [
        {
          cannot: `use the attribute ${name} on <${tag}>`,
          expected: known === '' ? 'no attribute' : `one of ${known}`,
        },
      ];
    }
    if (allowed.accepts(value)) return [];
    return [{ cannot: `use this ${name} on <${tag}>`, expected: allowed.expected }];
  });
}

function faultsOfClass(tag: string, rule: TagRule, value: string) {
  return value
    .split(/\s+/)
    .filter((name) => name !== '' && !rule.classes.includes(name))
    .map((name) => ({
      cannot: `use the class ${JSON.stringify(name)} on <${tag}>`,
      expected: rule.classes.length === 0 ? 'no class' : rule.classes.join(', '),
    }));
}

/** Stands for what a template fills in later, so that its fixed text can be checked by itself. */
export const unknownValue = '\u{E000}';
/** Takes the room of a statement that was taken out, so that what follows keeps its column. */
export const filler = '\u{E001}';

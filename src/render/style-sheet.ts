// The table of look and a page form arrive; the style sheet of the HTML letter leaves.
import type { NoticeLook, PageForm, ParagraphLook, TableLook } from './block.js';
import { type BoxLook, look, scaleOf } from './look.js';

type ColourName = keyof typeof look.colour;
const colourNames = Object.keys(look.colour) as readonly ColourName[];

/** Faces that most devices have, with figures that can be told apart; nothing is fetched. */
const faces =
  '"Noto Sans", "Segoe UI", Roboto, "Helvetica Neue", Arial, "Noto Sans Arabic", "Noto Nastaliq Urdu", sans-serif';

/** What stands in the page's lower corners: text before, between and after the page numbers. */
export type Corners = { readonly footer: string; readonly header: string; readonly pageOf: string };

/**
 * The whole style sheet. Every colour is a variable that stands for a role, so that dark screens and forced
 * colours change it in one place. Sizes on screen are in rem: the reader's own setting counts.
 * @example styleSheet({ paper: 'A4', size: 'standard' }, corners)
 */
export function styleSheet(form: PageForm, corners: Corners): string {
  return [
    variables('', look.colour),
    `@media (prefers-color-scheme:dark){@media screen{${variables('color-scheme:dark;', look.dark)}}}`,
    body(form),
    headings(),
    paragraphs(look.sizes[form.size]),
    lists(),
    notices(),
    tables(),
    pictures(),
    pairs(),
    letterhead(),
    paper(form, corners),
    forcedColours(),
  ].join('\n');
}

/** Shapes keep an author's colours where the reader has chosen others (CSS Color Adjustment 1, 3.1): they take the reader's by name. */
function forcedColours(): string {
  const grounds: readonly ColourName[] = ['paper', 'wash', 'sand'];
  const set = colourNames.map(
    (name) => `--${name}:${grounds.includes(name) ? 'Canvas' : 'CanvasText'}`,
  );
  return `@media (forced-colors:active){:root{${set.join(';')}}.notice{border:1px solid}}`;
}

function variables(extra: string, colours: Readonly<Record<ColourName, string>>): string {
  const set = colourNames.map((name) => `--${name}:${colours[name]}`).join(';');
  return `:root{${extra}${set}}`;
}

/** The variable that stands for a colour of the table. */
function paint(colour: string | null): string {
  if (colour === null) return 'none';
  const name = colourNames.find((known) => look.colour[known] === colour);
  return name === undefined ? colour : `var(--${name})`;
}

function body(form: PageForm): string {
  const base = round((look.sizes[form.size] * 4) / 3 / 16);
  return [
    `html{font-size:100%;-webkit-text-size-adjust:100%}`,
    `body{margin:0;background:var(--paper);color:var(--ink);font-family:${faces};font-size:${base}rem;line-height:${look.leading.screen};text-align:start;overflow-wrap:break-word}`,
    'main,.running{max-width:36em;margin:0 auto;padding:0 1em}',
    'main.beside{max-width:68em}',
    `main{padding-top:1em;padding-bottom:1.5em}`,
    `.running{color:${paint(look.text.running.colour)};font-size:${scaleOf('running', look.sizes[form.size])}em;max-width:45em}`,
    `:lang(ur){line-height:${look.leading.nastaliq};font-family:"Noto Sans","Noto Nastaliq Urdu","Urdu Typesetting",${faces}}`,
    `:lang(ur-Arab){line-height:${look.leading.tall};font-family:${faces}}`,
    ...['hi', 'bn', 'pa', 'gu', 'ta', 'ne', 'mr', 'my', 'km', 'th', 'lo', 'ar', 'fa', 'ps'].map(
      (lang) => `:lang(${lang}){line-height:${look.leading.tall}}`,
    ),
    'a{color:var(--accent);text-underline-offset:.15em}',
    'a:focus-visible{outline:3px solid var(--accent);outline-offset:2px}',
    'strong{font-weight:700}',
    // On a narrow screen a long date in large type may be wider than the line.
    '@media print,(min-width:30em){.together{white-space:nowrap}}',
    `hr{border:0;border-top:${look.rule.width}pt solid ${paint(look.rule.colour)};margin:${look.space.block}em 0}`,
  ].join('\n');
}

function headings(): string {
  const each = (['h1', 'h2', 'h3'] as const).map((name) => {
    const { strong, colour } = look.text[name];
    const size = look.scale[name];
    const above = round(look.space.heading / size);
    const below = round(look.space.afterHeading / size);
    return `${name}{font-size:${size}em;font-weight:${strong ? 700 : 400};color:${paint(colour)};line-height:${look.leading.heading};margin:${above}em 0 ${below}em}`;
  });
  return `${each.join('\n')}\nh1,h2,h3{break-after:avoid}`;
}

function paragraphs(base: number): string {
  const names = Object.keys(look.scale).filter(
    (name) => !/^(h[123]|running)$/.test(name),
  ) as ParagraphLook[];
  return names
    .map((name) => {
      const { strong, colour } = look.text[name];
      const size = scaleOf(name, base);
      const margin =
        name === 'address' || name === 'label' ? 0 : round(look.space.paragraph / size);
      return `p.${name},figcaption.${name}{font-size:${size}em;font-weight:${strong ? 700 : 400};color:${paint(colour)};margin:0 0 ${margin}em}`;
    })
    .join('\n');
}

function lists(): string {
  const { paragraph, indent, item } = look.space;
  const { tick, sign } = look;
  const plain = `ul,ol{margin:0 0 ${paragraph}em;padding-inline-start:${indent}em}li{margin:0 0 ${item}em}li>p{margin-bottom:${item}em}`;
  // The box is as high as a capital letter and a little more, on the first line.
  const down = round((look.leading.screen - tick.side) / 2);
  return [
    plain,
    `.ticks{list-style:none;padding:0}.ticks>li{position:relative;padding-inline-start:${indent}em}`,
    `.ticks>li::before{content:"";position:absolute;inset-inline-start:0;top:${down}em;box-sizing:border-box;width:${tick.side}em;height:${tick.side}em;border:${tick.edgeWidth}pt solid ${paint(tick.edge)};background:${paint(tick.fill)}}`,
    `.signed{display:flex;gap:${sign.gap}em}.signed>div{min-width:0;flex:1}.signed>svg{flex:none;height:${sign.height}em}`,
    '.signed>div>:last-child{margin-bottom:0}',
  ].join('\n');
}

function notices(): string {
  const names = Object.keys(look.notice) as NoticeLook[];
  const each = names.map((name) => {
    const box: BoxLook = look.notice[name];
    const edge = `${box.edgeWidth}pt solid ${paint(box.edge)}`;
    const border =
      box.sides === 'all'
        ? `border:${edge}`
        : box.sides === 'start'
          ? `border-inline-start:${edge}`
          : 'border:0';
    return `.notice.${name}{background:${box.fill === null ? 'none' : paint(box.fill)};${border};padding:${box.padding}em}`;
  });
  return [
    `.notice{margin:${look.space.block}em 0;break-inside:avoid}`,
    '.notice>:first-child{margin-top:0}.notice>:last-child{margin-bottom:0}',
    ...each,
  ].join('\n');
}

function tables(): string {
  const names = Object.keys(look.table) as TableLook[];
  const each = names.map((name) => {
    const { rule, ruleWidth, headFill, padding } = look.table[name];
    return [
      `table.${name} th,table.${name} td{border-bottom:${ruleWidth}pt solid ${paint(rule)};padding:${padding}em ${padding * 2}em ${padding}em 0}`,
      `table.${name} thead th{background:${headFill === null ? 'none' : paint(headFill)}}`,
    ].join('\n');
  });
  return [
    '.table{overflow-x:auto}',
    `table{border-collapse:collapse;width:100%;margin:0 0 ${look.space.block}em}`,
    'caption{text-align:start;font-weight:700;padding-bottom:.3em}',
    'th,td{text-align:start;vertical-align:top;font-variant-numeric:tabular-nums}',
    'td>p,th>p{margin:0}tr{break-inside:avoid}',
    ...each,
  ].join('\n');
}

function pictures(): string {
  const each = Object.entries(look.shapes).map(([name, shape]) => {
    const dash = shape.dash === null ? '' : `;stroke-dasharray:${shape.dash.join(' ')}`;
    const stroke =
      shape.stroke === null
        ? 'stroke:none'
        : `stroke:${paint(shape.stroke)};stroke-width:${shape.width}${dash}`;
    return `.shape-${name}{fill:${paint(shape.fill)};${stroke}}`;
  });
  return [
    `figure{margin:${look.space.paragraph}em 0;break-inside:avoid}`,
    'svg{display:block;max-width:100%;height:auto;overflow:visible;stroke-linejoin:round;stroke-linecap:round}',
    // Words of a picture have their places: wider spacing (WCAG 2.2, 1.4.12) would print one over another.
    'svg text{font-family:inherit;unicode-bidi:isolate;letter-spacing:0!important;word-spacing:0!important}',
    ...each,
  ].join('\n');
}

function pairs(): string {
  const { wideShare } = look.space;
  const wideColumns = `${wideShare}fr ${(1 - wideShare).toFixed(2)}fr`;
  return [
    `.pair{display:grid;gap:0 ${look.space.gutter}em;break-inside:avoid-page}`,
    '@media screen and (min-width:48em){.pair{grid-template-columns:1fr 1fr}}',
    '@media print{.pair{grid-template-columns:1fr 1fr}}',
    `@media screen and (min-width:48em){.pair.wide{grid-template-columns:${wideColumns}}}`,
    `@media print{.pair.wide{grid-template-columns:${wideColumns}}}`,
    '.pair>*{min-width:0}',
    // Columns inside a column would be too narrow.
    '.pair .pair{grid-template-columns:1fr!important}',
    `.pair{margin-top:${look.space.block}em}`,
    '.pair>div>:first-child,.pair>div>div>:first-child{margin-top:0}',
    '.keep{break-inside:avoid}',
    '.page-break{break-before:page;height:0}',
  ].join('\n');
}

/** A logo keeps its own colours, on paper's white even where the screen is dark. */
function letterhead(): string {
  const { gap, share } = look.logo;
  return [
    `.letterhead{display:flex;gap:${gap}em;align-items:flex-start}.letterhead>div{min-width:0;flex:1}`,
    `.logo{flex:none;max-width:${share * 100}%;height:auto;background:${look.colour.paper};forced-color-adjust:none}`,
  ].join('\n');
}

function paper(form: PageForm, { footer, header, pageOf }: Corners): string {
  const page = look.page[form.paper];
  const size = look.sizes[form.size];
  const small = `font-family:${faces};font-size:${round(size * scaleOf('running', size))}pt;color:${look.text.running.colour}`;
  return [
    `@page{size:${page.width}pt ${page.height}pt;margin:${page.margin}pt;`,
    `@top-right{content:${quote(header)};${small}}`,
    `@bottom-left{content:${quote(footer)};${small}}`,
    `@bottom-right{content:${counters(pageOf)};${small}}}`,
    `@media print{body{font-size:${look.sizes[form.size]}pt;line-height:${look.leading.body};-webkit-print-color-adjust:exact;print-color-adjust:exact}`,
    'main{max-width:none;padding:0}.running{display:none}a{color:inherit;text-decoration:none}',
    'p,li{orphans:2;widows:2}}',
  ].join('\n');
}

/** '{page}' and '{pages}' become the browser's own counters. */
function counters(pageOf: string): string {
  return (
    pageOf
      .split(/(\{pages?\})/)
      .filter((part) => part !== '')
      .map((part) =>
        part === '{page}' ? 'counter(page)' : part === '{pages}' ? 'counter(pages)' : quote(part),
      )
      .join(' ') || '""'
  );
}

/** A CSS string in which nothing but letters, digits and spaces stands as itself. */
function quote(text: string): string {
  const safe = text.replace(/[^\p{L}\p{N} ]/gu, (character) => {
    const code = character.codePointAt(0) ?? 0xfffd;
    return `\\${code.toString(16)} `;
  });
  return `"${safe}"`;
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}

// A folder arrives; letters a second and processor time a letter leave, for the program and for other ways to a PDF.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { floorOf } from './floor.js';
import { fixedLoop, processorSeconds } from './measured-run.js';
import { mailing, root } from './ours.js';
import { barePdfkit, chromiumPrinter } from './rivals.js';
import { typesetter, typesetterName } from './typesetter.js';

const [short, long] = [200, 1000];
/** Drawn by the others, after as many that pay for what is opened and compiled once. */
const compared = 40;

/** Every way gets the letters of the same people; its own start is not counted. */
export async function measureRates(folder) {
  const ours = await ourRate(folder);
  const read = async (format) => {
    const { letters } = await mailing(folder, 2 * compared, format);
    return readdirSync(letters).map((name) => readFileSync(join(letters, name)));
  };
  const [html, text, pdf] = [
    (await read('html')).map(String),
    (await read('text')).map(String),
    await read('pdf'),
  ];
  const others = [
    ['a browser (headless Chromium), same HTML', await chromiumPrinter(html)],
    ['a typesetter (typst), same words', await typesetter(html, join(root, 'dist/fonts'))],
    ['pdfkit, all handed over ready made', await floorOf(pdf[0])],
    ['pdfkit, bare words, no tags', barePdfkit(text)],
  ];
  const rows = [row('Ironleaf', ours, ours)];
  for (const [name, way] of others) {
    if (way !== null) rows.push(row(name, await rateOf(way), ours));
    else rows.push([`${name}: npm install --no-save ${typesetterName} first`, '', '', '', '']);
  }
  return [
    ['a letter as PDF', 'a second', 'processor', 'Ironleaf, by the clock', 'by processor'],
    ...rows,
  ];
}

/** Two lengths, so that the start drops out. */
async function ourRate(folder) {
  const before = fixedLoop().seconds;
  const [few, many] = [await mailing(folder, short, 'pdf'), await mailing(folder, long, 'pdf')];
  const loop = (before + fixedLoop().seconds) / 2;
  const count = long - short;
  return { rate: count / (many.wall - few.wall), cpu: (many.cpu - few.cpu) / count, loop };
}

async function rateOf({ drawOne, close }) {
  for (let nth = 0; nth < compared; nth++) await drawOne(nth);
  const before = fixedLoop().seconds;
  const [began, cpu] = [performance.now(), processorSeconds()];
  for (let nth = compared; nth < 2 * compared; nth++) await drawOne(nth);
  const seconds = (performance.now() - began) / 1000;
  const spent = processorSeconds() - cpu;
  await close?.();
  const loop = (before + fixedLoop().seconds) / 2;
  return { rate: compared / seconds, cpu: spent / compared, loop };
}

/** Ratios over one: Ironleaf is so many times as fast. By the clock each rate is taken in the time of the fixed loop beside it. */
function row(name, one, ours) {
  const clock = (ours.rate * ours.loop) / (one.rate * one.loop);
  return [
    name,
    one.rate.toFixed(one.rate < 20 ? 1 : 0),
    `${(1000 * one.cpu).toFixed(1)} ms`,
    one === ours ? '1' : `${clock.toFixed(2)} times`,
    one === ours ? '1' : `${(one.cpu / ours.cpu).toFixed(2)} times`,
  ];
}

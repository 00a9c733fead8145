// A folder arrives; letters a second and processor time a letter leave, for the program and for other ways to a PDF.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { floorOf } from './floor.js';
import { processorSeconds } from './measured-run.js';
import { mailing, median, root } from './ours.js';
import { barePdfkit, chromiumPrinter } from './rivals.js';
import { typesetter, typesetterName } from './typesetter.js';

const [short, long] = [200, 1000];
/** Drawn by the others, after as many that pay for what is opened and compiled once, again and again for so long. */
const compared = 40;
const seconds = 3;

/** Every way gets the letters of the same people; its own start is not counted. */
export async function measureRates(folder) {
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
  // A shared machine is quicker at one moment than at the next: ours is measured before and after each of the others.
  const ours = [await ourRate(folder)];
  const rows = [];
  for (const [name, way] of others) {
    if (way === null) {
      rows.push([`${name}: npm install --no-save ${typesetterName} first`, '', '', '', '']);
      continue;
    }
    const one = await rateOf(way);
    ours.push(await ourRate(folder));
    rows.push(row(name, one, middle(ours.slice(-2))));
  }
  return [
    ['a letter as PDF', 'a second', 'processor', 'Ironleaf, by the clock', 'by processor'],
    row('Ironleaf', middle(ours), null),
    ...rows,
  ];
}

/** Two lengths, so that the start drops out. */
async function ourRate(folder) {
  const [few, many] = [await mailing(folder, short, 'pdf'), await mailing(folder, long, 'pdf')];
  const count = long - short;
  return { wall: (many.wall - few.wall) / count, cpu: (many.cpu - few.cpu) / count };
}

async function rateOf({ drawOne, close }) {
  for (let nth = 0; nth < compared; nth++) await drawOne(nth);
  const [began, cpu] = [performance.now(), processorSeconds()];
  const passed = () => (performance.now() - began) / 1000;
  let drawn = 0;
  for (; drawn < compared || passed() < seconds; drawn++)
    await drawOne(compared + (drawn % compared));
  const one = { wall: passed() / drawn, cpu: (processorSeconds() - cpu) / drawn };
  await close?.();
  return one;
}

/** Seconds a letter: of two the mean, of more the median. */
function middle(measured) {
  const of = (kind) => {
    const times = measured.map((one) => one[kind]);
    return times.length === 2 ? (times[0] + times[1]) / 2 : median(times);
  };
  return { wall: of('wall'), cpu: of('cpu') };
}

/** Ratios over one: Ironleaf is so many times as fast. */
function row(name, one, ours) {
  const rate = 1 / one.wall;
  return [
    name,
    rate.toFixed(rate < 20 ? 1 : 0),
    `${(1000 * one.cpu).toFixed(1)} ms`,
    ours === null ? '1' : `${(one.wall / ours.wall).toFixed(2)} times`,
    ours === null ? '1' : `${(one.cpu / ours.cpu).toFixed(2)} times`,
  ];
}

// npm run bench -- page [N]: how soon the page shows its first letter, and how soon a retyped value stands in it.
// In the Chromium of the tests, from file:// with the network cut. Processor time beside the clock's, for a busy machine.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import chromiumFile from '@sparticuz/chromium';
import { chromium } from 'playwright-core';
import { fixedLoop } from './measured-run.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const limits = { opening: 2000, retyping: 100 };
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
];

const results = (ferritin) => `Name: Mirren Sallow    DOB: 14 Jun 1987    Sex: F
Test	17 Nov 2026	Unit	Reference range
Haemoglobin	108 L	g/L	115 - 155
Ferritin	${ferritin} L	ug/L	30 - 400
Transferrin saturation	9 L	%	16 - 50
`;

/** Runs in the page: types the results and gives the moment, since the page was opened, at which the letter says so. */
async function typeAndWait({ text, shown }) {
  const frame = () => new Promise(requestAnimationFrame);
  const find = async (look) => {
    for (;;) {
      const found = look();
      if (found) return found;
      await frame();
    }
  };
  const field = await find(() => document.querySelector('textarea'));
  const began = performance.now();
  const write = Object.getOwnPropertyDescriptor(HTMLTextAreaElement.prototype, 'value').set;
  write.call(field, text);
  field.dispatchEvent(new Event('input', { bubbles: true }));
  const example = [...document.querySelectorAll('button')].find(({ textContent }) =>
    textContent.startsWith('Use the invented example clinic'),
  );
  example?.click();
  const letter = () => document.querySelector('iframe.letter')?.contentDocument?.body?.textContent;
  await find(() => letter()?.includes(shown));
  // Two frames: what was put into the letter has been laid out and painted.
  await frame();
  await frame();
  return { began, ended: performance.now() };
}

/** Seconds of the page's main thread alone. */
async function busy(session) {
  const { metrics } = await session.send('Performance.getMetrics');
  return 1000 * metrics.find(({ name }) => name === 'TaskDuration').value;
}

async function measureOpening(browser, file, retypings) {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    offline: true,
  });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  await page.goto(pathToFileURL(file).href, { waitUntil: 'commit' });
  const first = await page.evaluate(typeAndWait, { text: results(9), shown: '9 ug/L' });
  const opening = { clock: first.ended, processor: await busy(session) };
  const retyping = [];
  for (let i = 0; i < retypings; i++) {
    const before = await busy(session);
    const ferritin = 10 + (i % 4);
    const shown = `${ferritin} ug/L`;
    const { began, ended } = await page.evaluate(typeAndWait, { text: results(ferritin), shown });
    retyping.push({ clock: ended - began, processor: (await busy(session)) - before });
  }
  await context.close();
  return { opening, retyping };
}

const sorted = (numbers) => numbers.toSorted((a, b) => a - b);
const median = (numbers) => sorted(numbers)[Math.floor(numbers.length / 2)];

function row(name, times, limit) {
  const [clock, processor] = ['clock', 'processor'].map((kind) => times.map((time) => time[kind]));
  const whole = (number) => number.toFixed(0);
  return [
    name,
    `${whole(median(clock))} ms, worst ${whole(Math.max(...clock))} of ${times.length}`,
    `processor ${whole(median(processor))} ms, worst ${whole(Math.max(...processor))}; wanted: ${limit} ms`,
  ];
}

/** Rows of the table: what, value, more. */
export async function measurePage(count = 9) {
  const folder = mkdtempSync(join(tmpdir(), 'ironleaf-page-bench-'));
  const browser = await chromium.launch({
    executablePath: await chromiumFile.executablePath(),
    args: flags,
  });
  try {
    execFileSync(process.execPath, [join(root, 'dist/ironleaf.cjs'), 'page', '--build', folder], {
      stdio: 'ignore',
    });
    const file = join(folder, 'ironleaf.html');
    // The first opening pays for the browser's own start.
    await measureOpening(browser, file, 1);
    const openings = [];
    for (let i = 0; i < count; i++) openings.push(await measureOpening(browser, file, 4));
    return [
      ['the page', 'by the clock', 'more'],
      ['as one file', `${(statSync(file).size / 1e6).toFixed(1)} MB`, 'en, es, ar, hi'],
      ['fixed loop', `${fixedLoop().seconds.toFixed(2)} s`, 'what one thread gets at this moment'],
      row(
        'opening to first letter',
        openings.map(({ opening }) => opening),
        limits.opening,
      ),
      row(
        'retyping to redrawn letter',
        openings.flatMap(({ retyping }) => retyping),
        limits.retyping,
      ),
    ];
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

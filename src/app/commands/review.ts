// ironleaf review: a folder of letters in; a page for the clinician who checks them out, and their signature in.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Argv, CommandModule } from 'yargs';
import { z } from 'zod';
import { explainer } from '../../letter/explain.js';
import {
  addSignatures,
  idsToSign,
  judge,
  readIds,
  recordLists,
  reviewPage,
  type ReviewRow,
  reviewRow,
  runSeal,
  type Seal,
  signable,
  soundly,
  whole,
  writeWhole,
} from '../../mailing/index.js';
import { readInputFile } from '../input.js';
import { sayProgress } from '../say-progress.js';
import { Stop, status } from '../status.js';
import {
  type Bench,
  eveningOf,
  inFolder,
  putPage,
  reopenBench,
  workMailing,
} from '../work-mailing.js';
import { named } from './letter-options.js';
import { afterReview, afterSigning } from './say-next.js';
import { dateOf } from './shared.js';

function options(yargs: Argv) {
  return yargs
    .positional('folder', { type: 'string', demandOption: true, describe: 'Folder of a run' })
    .option('sign', { type: 'string', describe: 'File of the ids that are right, one a line' })
    .option('checked-by', { type: 'string', describe: 'Clinician who signs' })
    .option('date', { type: 'string', describe: 'Date of signing, YYYY-MM-DD' })
    .implies('sign', 'checked-by')
    .example('$0 review evening', 'review.pdf: one row a letter; to-sign.txt: their ids')
    .example(
      '$0 review evening --sign evening/to-sign.txt --checked-by "Dr Abara"',
      'Signs these letters',
    );
}
type Words = Awaited<ReturnType<typeof options>['argv']>;

export const reviewCommand: CommandModule<object, Words> = {
  command: 'review <folder>',
  describe: 'Show every letter of a run in one row, to be checked and signed',
  builder: (yargs) => options(yargs) as Argv<Words>,
  handler: async (words) => {
    const bench = await reopenBench(words.folder);
    await inFolder(words.folder, whole, async () => {
      if (words.sign !== undefined) await sign(bench, words, await idsOf(words.sign));
      const open = await show(bench);
      const after = words.sign === undefined ? afterReview : afterSigning;
      for (const line of after(words.folder, open)) console.error(line);
    });
  },
};

const shownFile = 'review.json';
/** Nobody reads and answers for more in one go; the page would also outgrow its template's limit. */
const mostReviewed = 1500;
const shown = z.object({
  run: z.string(),
  letters: z.array(z.object({ stem: z.string(), seal: z.string() })),
});

/** @returns letters nobody signed. */
async function show(bench: Bench): Promise<number> {
  const rows = await rowsOf(bench);
  const { folder, choices, desk } = bench;
  if (rows.length > mostReviewed)
    throw new Stop(status.badData, [
      `There are ${rows.length} letters; a review page holds at most ${mostReviewed}.`,
      '  Split the file of reports into parts that one clinician can read, and give each a folder of its own.',
    ]);
  const put = (name: string, content: string | Uint8Array) =>
    writeWhole(join(folder, name), content);
  await putPage(put, 'review', reviewPage(rows, choices.date), bench, 'dense');
  const letters = rows.map(({ stem, seal }) => ({ stem, seal }));
  await put(shownFile, `${JSON.stringify({ run: runSeal(rows), letters })}\n`);
  await put('to-sign.txt', idsToSign(rows));
  await recordLists(folder, whole, desk.now);
  for (const name of ['review.html', 'review.pdf', 'to-sign.txt']) console.log(join(folder, name));
  return rows.filter(({ settled }) => !settled).length;
}

/** A signature is for what the page showed: a letter that changed since is not signed, and is said. */
async function sign(bench: Bench, words: Words, ids: readonly string[]): Promise<void> {
  const by = named(words.checkedBy, '--checked-by') ?? '';
  const before = await shownBefore(bench.folder);
  const { fit, unknown, changed } = signable(ids, before, await rowsOf(bench));
  const problems = [
    // Another file given by mistake may name patients: its lines are counted, not repeated.
    ...(unknown.length > 0
      ? [`${unknown.length} lines name no letter of the review page; nothing was signed.`]
      : []),
    ...changed.map((id) => `${id}: changed since the review page was made; nothing was signed.`),
  ];
  if (problems.length > 0)
    throw new Stop(status.badData, [...problems, '  Run ironleaf review again and check again.']);
  const date = dateOf(words.date);
  await addSignatures(
    bench.folder,
    fit.map((seal) => ({ ...seal, by, date })),
  );
  await workMailing(
    bench,
    whole,
    sayProgress(process.stderr, () => performance.now()),
  );
  console.error(`${fit.length} letters signed.`);
}

async function rowsOf(bench: Bench): Promise<readonly ReviewRow[]> {
  const evening = await eveningOf(bench);
  const explain = explainer(await bench.kit.language('en'));
  const rows: ReviewRow[] = [];
  for (let index = 0; index < bench.source.count; index += 1) {
    const judged = await judge(evening, index);
    const steps = judged.kind === 'letter' ? bench.desk.steps(judged.understood) : [];
    const row = reviewRow(judged, explain, steps);
    if (row !== null) rows.push(row);
  }
  return rows;
}

async function shownBefore(folder: string): Promise<readonly Seal[]> {
  const text = await readFile(join(folder, shownFile), 'utf8').catch(() => null);
  if (text === null)
    throw new Stop(status.noInput, ['There is no review page yet; run ironleaf review first.']);
  return soundly(shownFile, () => shown.parse(JSON.parse(text))).letters;
}

async function idsOf(path: string): Promise<readonly string[]> {
  const { bytes } = await readInputFile(path, 16 * 1024 * 1024);
  return readIds(new TextDecoder().decode(bytes));
}

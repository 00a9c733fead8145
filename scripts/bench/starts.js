// A folder arrives; how long the program takes from nothing to its first result leaves, beside Node that does nothing.
import { join } from 'node:path';
import { measuredRun } from './measured-run.js';
import { letter, median, program, root } from './ours.js';

const rounds = 7;

/** Every round runs each once, so that a busy moment meets all of them. */
export async function measureStarts(folder) {
  const example = 'all-in-range.json';
  const starts = {
    'node -e 0': () => measuredRun(['-e', '0']),
    'letter, HTML and PDF': () => letter(folder, example, 'html,pdf'),
    'letter, HTML': () => letter(folder, example, 'html'),
    explain: () => measuredRun([program, 'explain', join(root, 'examples', example)]),
  };
  const times = new Map(Object.keys(starts).map((name) => [name, []]));
  for (let round = 0; round < rounds; round++)
    for (const [name, start] of Object.entries(starts))
      times.get(name).push(1000 * (await start()).wall);
  const bare = median(times.get('node -e 0'));
  return [
    ['cold start', `median of ${rounds}`, 'more than Node', 'times Node'],
    ...[...times].map(([name, each]) => [
      name,
      `${median(each).toFixed(0)} ms`,
      `${(median(each) - bare).toFixed(0)} ms`,
      (median(each) / bare).toFixed(1),
    ]),
  ];
}

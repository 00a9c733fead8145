// What the README shows is run as it stands, in its order, in an empty folder with the examples beside it.
import { readFileSync, symlinkSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Desk, openDesk } from '../app/program.js';

const readme = readFileSync('README.md', 'utf8');
const blocks = (kind: string) =>
  [...readme.matchAll(new RegExp(`^\`\`\`${kind}\n([^]*?)^\`\`\``, 'gm'))].map(
    ([, text = '']) => text,
  );
const commands = blocks('sh')
  .flatMap((block) => block.split('\n'))
  .filter((line) => line.startsWith('npx ironleaf '));
/** As a shell would part them: at spaces, but for those within double quotes; a comment is left out. */
const wordsOf = (command: string) =>
  [...command.replace(/\s#.*$/, '').matchAll(/"([^"]*)"|[^\s"]+/g)]
    .map(([whole, quoted]) => quoted ?? whole)
    .slice(2);

let desk: Desk;
beforeAll(() => {
  desk = openDesk();
  symlinkSync(resolve('examples'), join(desk.folder, 'examples'));
});
afterAll(() => desk?.clear());

describe('the README', () => {
  it('shows commands', () => {
    expect(commands.length).toBeGreaterThan(10);
  });

  it.each(commands)('shows a command that works: %s', (command) => {
    const words = wordsOf(command);
    // A mailing with somebody to phone says so by its status (docs/programs.md).
    const status = words[0] === 'mailing' ? 1 : 0;
    expect(desk.run(...words)).toMatchObject({ status });
  });

  it('shows a report that is understood', () => {
    const [report = ''] = blocks('json');
    desk.put('report.json', report);
    expect(desk.run('check', 'report.json')).toMatchObject({ status: 0 });
    expect(desk.run('letter', 'report.json', '--demo', '--out', 'out').status).toBe(0);
    expect(desk.made()).toContain('report.en.pdf');
  });

  it.each([...readme.matchAll(/^\| [^|]+\| `(--[^`]+)`/gm)].map(([, options = '']) => options))(
    'shows options that are known: %s',
    (options) => {
      const words = wordsOf(`npx ironleaf letter examples/heavy-periods.json --demo ${options}`);
      expect(desk.run(...words, '--out', 'out').stderr).not.toMatch(/Unknown argument/i);
    },
  );
});

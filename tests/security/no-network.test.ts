// Runs the built program with every door to the network closed, and reads what is shipped for such doors.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Desk, openDesk } from '../app/program.js';

const program = resolve('dist/ironleaf.cjs');
const example = (name: string) => resolve('examples', name);

/** Loaded before the program: whatever would reach out ends the process with a status of its own. */
const guard = `
const end = (door) => () => { process.stderr.write('network: ' + door + '\\n'); process.exit(99); };
const net = require('node:net'), dns = require('node:dns'), dgram = require('node:dgram');
net.Socket.prototype.connect = end('connect');
net.Server.prototype.listen = end('listen');
dgram.createSocket = end('datagram');
for (const door of ['lookup', 'resolve', 'resolve4', 'resolve6']) {
  dns[door] = end(door);
  dns.promises[door] = end(door);
}
for (const door of ['fetch', 'WebSocket', 'EventSource']) globalThis[door] = end(door);
`;

const runs: readonly (readonly [string, ...string[]])[] = [
  ['letter', example('heavy-periods.json'), '--demo', '--format', 'html,pdf,text', '--out', 'out'],
  [
    'letter',
    example('heavy-periods.json'),
    '--demo',
    '--fridge-sheet',
    '--calendar',
    '--out',
    'out',
  ],
  ['explain', example('inflammation.json'), '--json'],
  ['check', example('evening-run.csv')],
  ['mailing', example('evening-run.csv'), '--demo', '--out', 'evening'],
  ['review', 'evening'],
  ['print', 'evening'],
  ['verify', 'evening'],
  ['languages'],
  ['page', '--build', 'stick'],
  ['schema'],
];

let desk: Desk;
beforeAll(() => {
  desk = openDesk();
  writeFileSync(join(desk.folder, 'guard.cjs'), guard);
});
afterAll(() => desk.clear());

function guarded(before: readonly string[], words: readonly string[]) {
  const [command = process.execPath, ...rest] = [
    ...before,
    process.execPath,
    '--require',
    './guard.cjs',
    program,
    ...words,
  ];
  return spawnSync(command, rest, { cwd: desk.folder, encoding: 'utf8' });
}

const withoutInterfaces = ['unshare', '--map-root-user', '--net'];
const mayCut = spawnSync('unshare', [...withoutInterfaces.slice(1), 'true']).status === 0;

describe('the program', () => {
  it('would be caught by the guard if it reached out', () => {
    const reach = ['-e', "require('node:net').connect(9, '127.0.0.1')"];
    const words = ['--require', './guard.cjs', ...reach];
    const { status } = spawnSync(process.execPath, words, { cwd: desk.folder });
    expect(status).toBe(99);
  });

  it.each(runs.map((words) => [words.join(' '), words] as const))(
    'reaches no network: %s',
    (_, words) => {
      // Where the system permits it, there is no network to reach either.
      const { status, stderr } = guarded(mayCut ? withoutInterfaces : [], words);
      expect(stderr).not.toContain('network:');
      expect([0, 1]).toContain(status);
    },
  );
});

describe('what is shipped', () => {
  const scripts = readdirSync('dist').filter((name) => /\.c?js$/.test(name));
  const doors =
    /\b(?:require|import)\(["'](?:node:)?(net|tls|https?|http2|dgram|dns|inspector|cluster)(?:\/promises)?["']\)|\bfrom ?["'](?:node:)?(net|tls|https?|http2|dgram|dns)["']/g;

  it.each(scripts)('asks for no door to the network in %s, save the server of the page', (name) => {
    const found = [...readFileSync(join('dist', name), 'utf8').matchAll(doors)];
    const asked = new Set(found.map(([, one, other]) => one ?? other));
    asked.delete('http');
    expect([...asked]).toEqual([]);
    if (name !== 'program.cjs') expect(found).toEqual([]);
  });

  it('listens on the loopback address alone', () => {
    const text = readFileSync('dist/program.cjs', 'utf8');
    const listening = [...text.matchAll(/\.listen\(([^)]*)\)/g)].map(([, words]) => words);
    expect(listening.length).toBeGreaterThan(0);
    for (const words of listening) expect(words).toContain('"127.0.0.1"');
  });

  it('fetches only in the loader of WebAssembly, which has the file at hand', () => {
    for (const name of scripts) {
      const text = readFileSync(join('dist', name), 'utf8');
      const fetched = [...text.matchAll(/\bfetch\([^)]*\)/g)].map(([call]) => call);
      for (const call of fetched)
        expect(call).toMatch(/^fetch\(\w+,\{credentials:"same-origin"\}\)$/);
    }
  });
});

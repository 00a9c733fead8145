// Runs the built program as an operator would, in a folder of its own.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const program = resolve('dist/ironleaf.cjs');

export type Ran = {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
};

export type Desk = {
  readonly folder: string;
  readonly run: (...words: string[]) => Ran;
  /** The same with text on standard input. */
  readonly pipe: (text: string, ...words: string[]) => Ran;
  readonly put: (name: string, content: string | Uint8Array | object) => string;
  /** Names of the files in out/, sorted; none when the folder was not made. */
  readonly made: () => string[];
  readonly read: (name: string) => string;
  readonly bytes: (name: string) => Uint8Array;
  readonly clear: () => void;
};

function run(cwd: string, input: string, words: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd,
    input,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status, stdout, stderr };
}

export function openDesk(): Desk {
  const folder = mkdtempSync(join(tmpdir(), 'ironleaf-test-'));
  const out = join(folder, 'out');
  return {
    folder,
    run: (...words) => run(folder, '', words),
    pipe: (text, ...words) => run(folder, text, words),
    put: (name, content) => {
      const path = join(folder, name);
      const plain = typeof content === 'string' || content instanceof Uint8Array;
      writeFileSync(path, plain ? content : JSON.stringify(content));
      return path;
    },
    made: () => (existsSync(out) ? readdirSync(out).sort() : []),
    read: (name) => readFileSync(join(folder, name), 'utf8'),
    bytes: (name) => readFileSync(join(folder, name)),
    clear: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** An everyday report; parts may be replaced. */
export function report(parts: Record<string, unknown> = {}): Record<string, unknown> {
  return {
    patient: { id: 'SB-9', name: 'Orla Finch', birthDate: '1990-02-03', sex: 'female' },
    collected: '2026-11-16',
    results: [
      result('haemoglobin', '131', 'g/L', '115', '155'),
      result('ferritin', '64', 'ug/L', '20', '300'),
      result('transferrin-saturation', '28', '%', '16', '50'),
      result('crp', '1', 'mg/L', '0', '5'),
    ],
    ...parts,
  };
}

export function result(
  analyte: string,
  value: string,
  unit: string | null,
  low?: string,
  high?: string,
) {
  const interval = low === undefined ? {} : { interval: { low, high } };
  return { analyte, value, ...(unit === null ? {} : { unit }), ...interval };
}

// Words of a command line arrive; the time, processor time and highest memory of the real program leave (Linux).
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';

const ticks = 100;

export async function measuredRun(words) {
  const { status, said, ...measured } = await startMeasured(words).ended;
  if (status !== 0) throw new Error(`ended with ${status}: ${said.slice(0, 500)}`);
  return measured;
}

/** The child, and a promise of its status (null when killed), what it said, seconds by the clock and of the processor, MiB. */
export function startMeasured(words) {
  const began = performance.now();
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'ignore', 'pipe'] });
  let [cpu, peak, said] = [0, 0, ''];
  child.stderr.on('data', (text) => {
    said += text;
  });
  const look = () => {
    try {
      cpu = statOf(child.pid).seconds;
      const status = readFileSync(`/proc/${child.pid}/status`, 'utf8');
      peak = Math.max(peak, Number(/VmHWM:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024);
    } catch {
      // It ended between two looks.
    }
  };
  const timer = setInterval(look, 20);
  const ended = new Promise((done) => {
    child.once('close', (status) => {
      clearInterval(timer);
      done({ status, said, wall: (performance.now() - began) / 1000, cpu, peak });
    });
  });
  return { child, ended };
}

function statOf(pid) {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' ');
  return { parent: fields[1], seconds: (Number(fields[11]) + Number(fields[12])) / ticks };
}

/** Processor time so far of this process and of all it started that still run. */
export function processorSeconds() {
  const { user, system } = process.cpuUsage();
  const stats = readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((pid) => {
      try {
        return [{ pid, ...statOf(pid) }];
      } catch {
        return [];
      }
    });
  const below = (parent) =>
    stats
      .filter((one) => one.parent === parent)
      .reduce((sum, { pid, seconds }) => sum + seconds + below(pid), 0);
  return (user + system) / 1e6 + below(String(process.pid));
}

/** The same sum every time: what the machine gives one thread at this moment, in seconds. */
export function fixedLoop() {
  const began = performance.now();
  let sum = 0;
  for (let i = 0; i < 2e8; i++) sum = (sum * 31 + i) | 0;
  return { seconds: (performance.now() - began) / 1000, sum };
}

// Counts of a run arrive; one moving line on a terminal leaves, or a quiet line now and then.
import type { Progress } from '../mailing/index.js';

type Out = { readonly isTTY?: boolean; readonly write: (text: string) => unknown };

/** Between two lines: on a terminal often enough to see it move, elsewhere so that a log stays short. */
const pause = { terminal: 200, log: 30_000 } as const;

/**
 * @param clock milliseconds; only ever used to say how fast it goes.
 * @example const tell = sayProgress(process.stderr, performance.now)
 */
export function sayProgress(out: Out, clock: () => number): (progress: Progress) => void {
  const began = clock();
  let last = began;
  return (progress) => {
    const { done, total } = progress;
    const now = clock();
    const finished = done === total;
    if (out.isTTY !== true) {
      if (!finished && now - last < pause.log) return;
      last = now;
      out.write(`${said(progress, now - began)}\n`);
      return;
    }
    if (!finished && now - last < pause.terminal) return;
    last = now;
    out.write(`\r\u001B[K${said(progress, now - began)}${finished ? '\n' : ''}`);
  };
}

function said(progress: Progress, milliseconds: number): string {
  const { total, done, made, kept, held, refused } = progress;
  const settled = done - held;
  const rate = milliseconds > 0 ? (settled * 1000) / milliseconds : 0;
  const left = rate > 0 ? Math.ceil((total - done) / rate) : null;
  return [
    `${done} of ${total} reports`,
    `${made} letters made`,
    ...(kept > 0 ? [`${kept} kept as they were`] : []),
    `${held} to phone`,
    `${refused} to fix`,
    `${Math.round(rate)} a second`,
    ...(done < total && left !== null ? [`about ${left} s left`] : []),
  ].join(', ');
}

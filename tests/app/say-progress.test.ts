// What an operator sees while a run goes on, at a terminal and in a log.
import { describe, expect, it } from 'vitest';
import { sayProgress } from '../../src/app/say-progress.js';

function hear(isTTY: boolean, seconds: number): string[] {
  const heard: string[] = [];
  let now = 0;
  const tell = sayProgress({ isTTY, write: (text) => heard.push(text) }, () => now);
  for (let done = 1; done <= 100; done += 1) {
    now = (done * seconds * 1000) / 100;
    tell({ total: 100, done, made: done, kept: 0, held: 0, refused: 0 });
  }
  return heard;
}

describe('progress', () => {
  it('moves on one line at a terminal and ends it once', () => {
    const heard = hear(true, 10);
    expect(heard.length).toBeGreaterThan(20);
    for (const line of heard) expect(line.startsWith('\r')).toBe(true);
    expect(heard.filter((line) => line.endsWith('\n'))).toHaveLength(1);
    expect(heard.at(-1)).toContain('100 of 100 reports, 100 letters made, 0 to phone, 0 to fix');
  });

  it('says rate and time left from what was done so far', () => {
    expect(hear(true, 10)[10]).toMatch(/10 a second, about \d s left/);
  });

  it('is one line in the log of a short run, and one every half minute of a long one', () => {
    expect(hear(false, 10)).toHaveLength(1);
    expect(hear(false, 120)).toHaveLength(4);
  });
});

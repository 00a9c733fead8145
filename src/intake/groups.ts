// Pieces of a file arrive one by one with whose they are; each person's pieces leave again by number.
import type { Problem } from '../problem.js';
import { at, fault } from './fault.js';

/** No evening is larger; past it the memory for the list of reports would not stay small. */
export const mostReports = 1_000_000;

/** @param least bytes of the shortest report of a format: a file of shorter pieces is none of reports. */
export function mostReportsIn(size: number, least: number): number {
  return Math.min(mostReports, Math.max(fewReports, Math.floor(size / least)));
}

const fewReports = 1000;

/** @param most such as '1000 reports'. */
export function tooManyPieces(name: string, row: number | null, most: string): Problem {
  return fault('too-many', at(name, row), 'cannot go on from here: the file is too long', {
    expected: `at most ${most}`,
    remedy: 'Split it into several files.',
  });
}

/** Pieces of one person in the order of the file, people in the order of their first pieces. A few bytes a piece. */
export class Groups {
  private readonly numbers = new Map<string, number>();
  private readonly first: number[] = [];
  private readonly last: number[] = [];
  private readonly next: number[] = [];

  get size(): number {
    return this.first.length;
  }

  /** @param key whose piece it is; null for a piece that is nobody else's. */
  add(key: string | null): number {
    const piece = this.next.push(-1) - 1;
    const known = key === null ? undefined : this.numbers.get(key);
    if (known !== undefined) {
      this.next[this.last[known] ?? 0] = piece;
      this.last[known] = piece;
      return known;
    }
    const number = this.first.push(piece) - 1;
    this.last.push(piece);
    if (key !== null) this.numbers.set(key, number);
    return number;
  }

  /** Numbers of a person's pieces, as they were added. */
  *piecesOf(number: number): Generator<number> {
    for (let at = this.first[number] ?? -1; at >= 0; at = this.next[at] ?? -1) yield at;
  }

  /** Nothing more will be added: the keys are let go. */
  close(): void {
    this.numbers.clear();
  }
}

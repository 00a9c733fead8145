// Every code of the closed lists is said of somebody.
import { describe, expect, it } from 'vitest';
import {
  clinicianNoteCodes,
  holdReasonCodes,
  interpret,
  patternReasonCodes,
} from '../../src/interpret/index.js';
import { flags } from '../../src/terms.js';
import { today } from './build.js';
import { people } from './people.js';

const read = () => Object.values(people).map((report) => interpret(report, today));
const sorted = (codes: Iterable<string>) => [...new Set(codes)].toSorted();

describe('every code', () => {
  it('of the reasons is said of somebody, and no other', () => {
    const said = read().flatMap(({ pattern, nearMisses }) => [
      ...pattern.supports,
      ...pattern.against,
      ...nearMisses,
    ]);
    expect(sorted(said.map(({ code }) => code))).toEqual(sorted(patternReasonCodes));
  });

  it('of the holds is said of somebody, and no other', () => {
    const said = read().flatMap(({ hold }) => hold.reasons.map(({ code }) => code));
    expect(sorted(said)).toEqual(sorted(holdReasonCodes));
  });

  it('of the notes for the clinician is said of somebody, and no other', () => {
    const said = read().flatMap((one) => one.clinicianNotes.map(({ code }) => code));
    expect(sorted(said)).toEqual(sorted(clinicianNoteCodes));
  });

  it('of the flags is raised of somebody', () => {
    const raised = read().flatMap((one) => one.flags.map(({ flag }) => flag));
    expect(sorted(raised)).toEqual(sorted(flags));
  });
});

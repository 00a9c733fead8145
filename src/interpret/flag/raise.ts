// In: a flag and what it rests on. Out: the flag as raised.
import type { Analyte, Flag } from '../../terms.js';
import type { FlagRaised } from '../interpretation.js';

type Grounds = {
  readonly analyte?: Analyte;
  readonly facts?: FlagRaised['facts'];
  readonly rules?: readonly string[];
};

/**
 * A raised flag; what is left out is empty.
 * @example raise('sex-unknown') // { flag: 'sex-unknown', analyte: null, facts: {}, rules: [] }
 */
export function raise(flag: Flag, { analyte, facts = {}, rules = [] }: Grounds = {}): FlagRaised {
  return { flag, analyte: analyte ?? null, facts, rules };
}

// The interpret room's doors: a report comes in, an interpretation goes out.
export { interpret } from './interpret.js';
export type * from './interpretation.js';
export {
  clinicianNoteCodes,
  holdReasonCodes,
  patternReasonCodes,
  reasonCodes,
} from './reason-codes.js';

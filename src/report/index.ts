// The report room's doors: written results come in, measured ones go out.
export { cleanText } from './clean-text.js';
export { checkReport } from './check-report.js';
export { canonicalUnit, convert, express } from './convert.js';
export { crossCheck } from './cross-check.js';
export { monthsBetween, readDate } from './date.js';
export { trimesterOf } from './pregnancy.js';
export type * from './report.js';

// The letter room's doors: interpretation and advice arrive, every word of a letter leaves, with no look.
export { type Calendar, type CalendarEvent, composeCalendar } from './calendar.js';
export { composeChartNote } from './chart-note.js';
export { composeCallSheet } from './call-sheet.js';
export type { Clinic } from './clinic.js';
export { composeLetter, isHeld } from './compose-letter.js';
export type { Content } from './content.js';
export { composeFridgeSheet } from './fridge-sheet.js';
export { type Language, type ReviewState, readLanguage } from './language.js';
export type { Addressee, LetterInput, LetterOptions, Release } from './letter-input.js';
export { composeReasoning, type ReasoningBlock, type ReasoningContent } from './reasoning.js';
export { sayReasoning } from './say-reasoning.js';

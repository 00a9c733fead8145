// The letter room's doors: interpretation and advice arrive, every word of a letter leaves, with no look.
export { type Calendar, type CalendarEvent, composeCalendar } from './calendar.js';
export { composeChartNote } from './chart-note.js';
export { type CallWords, composeCallSheet } from './call-sheet.js';
export type { Clinic, ClinicWords } from './clinic.js';
export { composeLetter } from './compose-letter.js';
export { isHeld } from './held.js';
export type { Content } from './content.js';
export { expectedMessages, variablesOf } from './compare-catalogue.js';
export { type Namespace, patientNamespaces, translatedNamespaces } from './english.js';
export { composeEasyRead } from './easy-read.js';
export { composeScript } from './phone-script.js';
export { composeFridgeSheet } from './fridge-sheet.js';
export { type Language, metaFile, readLanguage } from './language.js';
export {
  type Act,
  entryOf,
  hashesOf,
  isOutdated,
  noRecord,
  type Placed,
  type ReviewState,
  type ReviewStep,
  readRecord,
  reviewSteps,
  stateOf,
  type TranslationRecord,
  weakest,
} from './record.js';
export { groupActs, placedTexts, recordDrafts, withoutSource } from './record-drafts.js';
export { shortHash } from './short-hash.js';
export type { Addressee, LetterInput, LetterOptions, Release } from './letter-input.js';
export { composeReasoning, type ReasoningBlock, type ReasoningContent } from './reasoning.js';
export { sayReasoning } from './say-reasoning.js';

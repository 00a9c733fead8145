// The mailing room's doors: many reports arrive; a folder of letters and the lists beside it leave.
export {
  addSignatures,
  readApprovals,
  writeRelease,
} from './approvals.js';
export { callPages, callTable } from './call-list.js';
export { Damaged, soundly } from './damaged.js';
export type { Approval, Desk, MadeFile, Progress, Understood } from './desk.js';
export { lockFolder } from './lock.js';
export { type Evening, type Judged, judge } from './judge.js';
export { letterFolder, printName } from './letter-folder.js';
export { type Passwords, readPasswords } from './passwords.js';
export { type Addresses, readAddresses } from './print/addresses.js';
export { eveningLetters } from './print/evening-letters.js';
export { testPage } from './print/test-page.js';
export { openPrintFile, type PrintFile } from './print/print-file.js';
export { findWindow, type WindowPreset, windowPresets } from './print/windows.js';
export { recordLists } from './record-lists.js';
export { dropShareLists } from './share-lists.js';
export {
  idsToSign,
  readIds,
  type ReviewRow,
  reviewPage,
  reviewRow,
  runSeal,
  type Seal,
  signable,
} from './review.js';
export { runMailing } from './run.js';
export { type Survey, survey } from './twice.js';
export { type Finding, verifyFolder } from './verify.js';
export { sealOf } from './seal.js';
export { readShard, type Shard, shardName, whole } from './shard.js';
export { summaryPage, type Tally } from './summary.js';
export { writeWhole } from './whole-file.js';

// The reports of a run arrive; the letters that its records call made leave again, one by one, as documents.
import type { Checked } from '../../problem.js';
import type { LetterDocument } from '../../render/block.js';
import { type Evening, judge } from '../judge.js';
import { Damaged } from '../damaged.js';
import { readLedger } from '../manifest.js';
import { keyOf } from '../run.js';

type EveningLetter = {
  readonly stem: string;
  readonly id: string | null;
  /** A clinician signed or released it. */
  readonly checked: boolean;
  readonly document: Checked<LetterDocument>;
};

/** A letter whose report, template or signature changed since the run is none of them: run the mailing first. */
export async function* eveningLetters(
  evening: Evening,
  folder: string,
): AsyncGenerator<EveningLetter> {
  const { last, strange } = await readLedger(folder);
  if (strange.length > 0) throw new Damaged(strange);
  for (let index = 0; index < evening.source.count; index += 1) {
    const judged = await judge(evening, index);
    if (judged.kind !== 'letter') continue;
    const { stem, id, understood, language, approval } = judged;
    const record = last.get(stem);
    if (record?.outcome !== 'made' || record.key !== keyOf(judged)) continue;
    yield {
      stem,
      id,
      checked: approval.checkedBy !== null,
      document: await evening.desk.document(understood, language, approval),
    };
  }
}

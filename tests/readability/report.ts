// Nothing arrives; the verdicts on every letter the examples can make leave: English in every form, other languages in the usual one.
import { languageOf, translatedTags } from '../languages/folders.js';
import { english } from '../letter/fixtures.js';
import { judge, type Verdict } from './judge.js';
import { lettersIn } from './letters.js';

export { pageOf, tableOf } from './page.js';

export type Report = { readonly verdicts: readonly Verdict[]; readonly skipped: readonly string[] };

export const englishVerdicts = (): readonly Verdict[] => lettersIn(english, true).map(judge);

/** A translation that cannot be read yet is named and left out. */
export function everyVerdict(): Report {
  const skipped: string[] = [];
  const others = translatedTags.flatMap((tag) => {
    try {
      return lettersIn(languageOf(tag), false).map(judge);
    } catch {
      skipped.push(tag);
      return [];
    }
  });
  return { verdicts: [...englishVerdicts(), ...others], skipped };
}

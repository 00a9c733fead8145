// The fixed text of a template arrives; its foreign tags, classes and attributes leave, with their lines.
import { Parser } from 'htmlparser2';
import type { Problem } from '../problem.js';
import { lineFinder } from './line-finder.js';
import { markupProblem } from './parse-markup.js';
import { faultsOfTag } from './vocabulary.js';

/** Looks at each tag by itself: what stands in what is only known once the template is filled. */
export function faultsInTags(text: string, file: string): readonly Problem[] {
  const problems: Problem[] = [];
  const lineOf = lineFinder(text);
  const parser = new Parser(
    {
      onopentag(tag, attributes) {
        const line = lineOf(parser.startIndex);
        for (const { cannot, expected } of faultsOfTag(tag, attributes)) {
          problems.push(markupProblem(file, line, cannot, expected));
        }
      },
    },
    { lowerCaseAttributeNames: false },
  );
  parser.end(text);
  return problems;
}

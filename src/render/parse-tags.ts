// The fixed text of a template arrives; its foreign tags, classes and attributes leave, with their lines.
import { Parser } from 'htmlparser2';
import type { Problem } from '../problem.js';
import { lineFinder } from './line-finder.js';
import { markupProblem } from './parse-markup.js';
import { faultsOfTag, filler } from './vocabulary.js';

/** Looks at each tag by itself: what stands in what is only known once the template is filled. */
export function faultsInTags(text: string, file: string): readonly Problem[] {
  const problems: Problem[] = [];
  const lineOf = lineFinder(text);
  const parser = new Parser(
    {
      onopentag(tag, attributes) {
        const start = parser.startIndex;
        const column = start - text.lastIndexOf('\n', start - 1);
        for (const { cannot, expected } of faultsOfTag(tag, withoutFiller(attributes))) {
          problems.push(markupProblem(file, lineOf(start), cannot, expected, column));
        }
      },
    },
    { lowerCaseAttributeNames: false },
  );
  parser.end(text);
  return problems;
}

function withoutFiller(attributes: Readonly<Record<string, string>>): Record<string, string> {
  const rows = Object.entries(attributes).map((row) =>
    row.map((text) => text.replaceAll(filler, '')),
  );
  return Object.fromEntries(rows.filter(([name]) => name !== '')) as Record<string, string>;
}

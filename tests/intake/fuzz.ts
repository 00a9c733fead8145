// A number of runs arrives; every reader is fed broken and shuffled files, and each broken promise is told.
import fc from 'fast-check';
import { readInput } from '../../src/intake/index.js';
import type { WrittenReport } from '../../src/intake/written.js';

const samples: readonly (readonly [name: string, text: string])[] = [
  [
    'a.json',
    '{"patient":{"id":"7","sex":"female"},"collected":"2026-11-20","results":[{"analyte":"ferritin","value":9.50,"unit":"ug/L","interval":{"low":30,"high":400}}]}',
  ],
  [
    'a.json',
    '{"resourceType":"Bundle","entry":[{"resource":{"resourceType":"Patient","id":"p","gender":"female"}},{"resource":{"resourceType":"Observation","status":"final","code":{"text":"Ferritin"},"subject":{"reference":"Patient/p"},"effectiveDateTime":"2026-11-20","valueQuantity":{"value":9.5,"unit":"ug/L"},"referenceRange":[{"low":{"value":30},"high":{"value":400}}]}}]}',
  ],
  [
    'a.csv',
    'id,sex,collected,test,value,unit,low,high\n7,F,2026-11-20,Ferritin,"9,5",ug/L,30,400\n8,M,2026-11-20,Hb,101,g/L,115,165\n',
  ],
  ['a.csv', 'id;sex;collected;Ferritin (ug/L);Hb g/dL\n7;F;2026-11-20;12,5;9,8\n'],
  [
    'a.hl7',
    'MSH|^~\\&|L|S|C|S|20261120||ORU^R01|1|P|2.5.1\rPID|1||7||Q^T||19840309|F\rOBR|1||1|F|||20261120\rOBX|1|NM|2276-4^Ferritin^LN||9|ug/L|30 - 400|L~D|||F\rNTE|1||x\\T\\y\rOBX|2|SN|^CRP||<^5|mg/L|<5||||F\r',
  ],
  [
    'pasted',
    'Sex: F   DOB: 1984-03-09\nCollected: 2026-11-20\nFerritin   9 ug/L  (30 - 400)  L\nTest\t2026-11-20\t2026-05-02\tUnit\nHb\t101\t99\tg/L\n',
  ],
];
const pieces = [
  '"',
  '\\',
  ',',
  ';',
  '\t',
  '\n',
  '\r',
  '|',
  '^',
  '~',
  '&',
  '<',
  '>',
  '-',
  '0',
  '7',
  '1,234',
  '١',
  '\u202E',
  '\0',
  'Ferritin',
  'Hb',
  '%',
  'ug/L',
  '{',
  '}',
  '[',
  ']',
  ':',
  '__proto__',
  '  ',
  '(',
  ')',
  'É',
];

const mutated = fc
  .tuple(
    fc.constantFrom(...samples),
    fc.array(
      fc.record({
        at: fc.nat(1000),
        cut: fc.nat(6),
        put: fc.oneof(fc.constantFrom(...pieces), fc.string({ maxLength: 4 })),
      }),
      { maxLength: 5 },
    ),
  )
  .map(([[name, text], changes]) => {
    const broken = changes.reduce((whole, { at, cut, put }) => {
      const place = at % (whole.length + 1);
      return whole.slice(0, place) + put + whole.slice(place + cut);
    }, text);
    return { name, text: broken };
  });

/** Every number, unit, interval end and name of a report stands in the input; escapes are undone first. */
function inventedIn(report: WrittenReport, text: string): readonly string[] {
  const plain = text.replace(/\\u([0-9a-f]{4})/gi, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
  const results = [report.panel, ...report.previous].flatMap((panel) => panel.results);
  const written = results.flatMap(({ value, interval, labFlag }) => [
    value,
    interval?.low,
    interval?.high,
    labFlag,
  ]);
  return written.flatMap((part) =>
    part === null || part === undefined || plain.includes(part) ? [] : [part],
  );
}

/**
 * Feeds `runs` broken files to the readers. Throws, with the smallest file found, when one crashes,
 * takes over a second, or tells a value that the file does not hold.
 */
export async function fuzzReaders(runs: number, seed?: number): Promise<void> {
  const holds = fc.asyncProperty(mutated, async ({ name, text }) => {
    const started = performance.now();
    const intake = await readInput({ name, bytes: new TextEncoder().encode(text) });
    if (performance.now() - started > longest) throw new Error('took over a second');
    for (const read of intake.reports) {
      const invented = read.ok ? inventedIn(read.value, text) : [];
      if (invented.length > 0) throw new Error(`invented ${JSON.stringify(invented)}`);
    }
    if (intake.reports.length === 0) throw new Error('neither a report nor a problem');
  });
  await fc.assert(holds, { numRuns: runs, ...(seed === undefined ? {} : { seed }) });
}

const longest = 1000;

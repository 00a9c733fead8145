// Spreadsheets: the cells of a sheet read as a table, and files that are none or too large.
import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { readInput } from '../../src/intake/index.js';
import { reportsOf, resultsOf, said } from './file.js';

type Part = { readonly name: string; readonly text: string };

/** A zip with stored parts, by PKWARE APPNOTE 4.3; `claimed` is the size the directory tells. */
function zip(parts: readonly Part[], claimed: number | null = null): Uint8Array {
  const chunks: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, text } of parts) {
    const [path, data] = [Buffer.from(name), Buffer.from(text)];
    const facts = Buffer.alloc(26);
    facts.writeUInt16LE(20, 0);
    facts.writeUInt32LE(crc32(data), 10);
    facts.writeUInt32LE(data.length, 14);
    facts.writeUInt32LE(data.length, 18);
    facts.writeUInt16LE(path.length, 22);
    const local = Buffer.concat([Buffer.from('504b0304', 'hex'), facts, path, data]);
    const central = Buffer.alloc(46);
    central.write('504b01021400', 0, 'hex');
    facts.copy(central, 6, 0, 24);
    central.writeUInt32LE(claimed ?? data.length, 24);
    central.writeUInt32LE(offset, 42);
    directory.push(central, path);
    chunks.push(local);
    offset += local.length;
  }
  const list = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.write('504b0506', 0, 'hex');
  end.writeUInt16LE(parts.length, 8);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...chunks, list, end]);
}

const xmlns = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const packageRelations = 'http://schemas.openxmlformats.org/package/2006/relationships';

function sheet(rows: readonly (readonly (string | number)[])[]): readonly Part[] {
  const cell = (value: string | number, row: number, column: number) => {
    const place = `${String.fromCharCode(65 + column)}${row + 1}`;
    return typeof value === 'number'
      ? `<c r="${place}"><v>${value}</v></c>`
      : `<c r="${place}" t="inlineStr"><is><t>${value}</t></is></c>`;
  };
  const body = rows
    .map(
      (cells, i) =>
        `<row r="${i + 1}">${cells.map((value, j) => cell(value, i, j)).join('')}</row>`,
    )
    .join('');
  return [
    {
      name: '[Content_Types].xml',
      text: '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    },
    {
      name: '_rels/.rels',
      text: `<Relationships xmlns="${packageRelations}"><Relationship Id="rId1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    },
    {
      name: 'xl/workbook.xml',
      text: `<workbook ${xmlns} xmlns:r="${relations}"><sheets><sheet name="Lab" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    },
    {
      name: 'xl/_rels/workbook.xml.rels',
      text: `<Relationships xmlns="${packageRelations}"><Relationship Id="rId1" Type="${relations}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    },
    {
      name: 'xl/worksheets/sheet1.xml',
      text: `<worksheet ${xmlns}><sheetData>${body}</sheetData></worksheet>`,
    },
  ];
}

const wide = sheet([
  ['id', 'sex', 'collected', 'Ferritin (ug/L)', 'Hb (g/dL)'],
  ['0012', 'F', '2026-11-20', 12.5, '9,8'],
  ['13', 'M', '2026-11-20', '&lt;5'],
]);

describe('a spreadsheet', () => {
  it('is read as a table, with its numbers as they are stored', async () => {
    const intake = await readInput({ name: 'lab.xlsx', bytes: zip(wide) });
    expect(said(intake)).toEqual([]);
    expect(reportsOf(intake).map((report) => [report.patient.id, ...resultsOf(report)])).toEqual([
      ['0012', 'ferritin 12.5 ug/L', 'haemoglobin 9,8 g/dL'],
      ['13', 'ferritin <5 ug/L'],
    ]);
  });

  it.each([
    [
      'a zip that is no spreadsheet',
      zip([{ name: 'a.txt', text: 'x' }]),
      'cannot read this as a spreadsheet',
    ],
    ['a zip cut short', zip(wide).subarray(0, 400), 'cannot read this as a spreadsheet'],
    [
      'one that unpacks beyond measure',
      zip(wide, 900_000_000),
      'cannot read a spreadsheet of this size',
    ],
    ['an empty one', zip(sheet([])), 'cannot find a cell'],
  ])('is refused in one sentence: %s', async (_, bytes, expected) => {
    const problems = said(await readInput({ name: 'lab.xlsx', bytes }));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain(expected);
  });
});

describe('a spreadsheet of one kilobyte that names its last possible cell', () => {
  it('is refused at once, before a cell is laid out for every place', async () => {
    const far = '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>';
    const parts = sheet([['id', 'Ferritin (ug/L)']]).map(({ name, text }) => ({
      name,
      text: text.replace('</sheetData>', far),
    }));
    const started = performance.now();
    const intake = await readInput({ name: 'far.xlsx', bytes: zip(parts) });
    expect(said(intake)).toEqual([expect.stringContaining('reaches this far')]);
    expect(performance.now() - started).toBeLessThan(3000);
  });
});

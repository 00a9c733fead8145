// Rows of cells arrive; the bytes of a spreadsheet leave, made without the library that reads them.
import { crc32 } from 'node:zlib';

export type Part = { readonly name: string; readonly text: string };

/** A zip with stored parts, by PKWARE APPNOTE 4.3; `claimed` is the size the directory tells. */
export function zip(parts: readonly Part[], claimed: number | null = null): Uint8Array {
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

/** Parts of a spreadsheet with one sheet; text is written as it is, so markup in it must be escaped. */
export function sheet(rows: readonly (readonly (string | number)[])[]): readonly Part[] {
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

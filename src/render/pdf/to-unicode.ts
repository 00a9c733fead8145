// Character codes and the texts they stand for arrive; the map by which a reader extracts text leaves.
import type { Glyph } from './shape.js';

const mostInBlock = 100;

/** A ToUnicode map (ISO 32000-1, 9.10.3): each code and the text it stands for, a hundred to a block. */
export function toUnicode(cast: readonly (readonly [number, Pick<Glyph, 'text'>])[]): string {
  const rows = cast.map(([code, { text }]) => `<${hex4(code)}> <${utf16(text)}>`);
  const blocks: string[] = [];
  for (let from = 0; from < rows.length; from += mostInBlock) {
    const block = rows.slice(from, from + mostInBlock);
    blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`);
  }
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <ffff>
endcodespacerange
${blocks.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}

function utf16(text: string): string {
  return Array.from({ length: text.length }, (_, at) => hex4(text.charCodeAt(at))).join('');
}

/** Four hexadecimal digits, as a two-byte code is written. */
export function hex4(number: number): string {
  return number.toString(16).padStart(4, '0');
}

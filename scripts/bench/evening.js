// A number arrives; a table of so many invented patients leaves, written piece by piece. Every one gets a letter.

import { once } from 'node:events';
import { createWriteStream } from 'node:fs';

const first = ['Ada', 'Leila', 'Tomas', 'Nia', 'Ruth', 'Sami', 'Iris', 'Omar'];
const last = ['Quill', 'Haddad', 'Marsh', 'Okoro', 'Vance', 'Reyes', 'Fern', 'Bay'];

export async function writeEvening(path, count) {
  const out = createWriteStream(path);
  out.write('id,name,born,sex,collected,test,value,unit,reference range\n');
  for (let i = 0; i < count; i++) {
    const name = `${first[i % 8]} ${last[(i >> 3) % 8]}`;
    const who = `SB-${10000 + i},${name},19${60 + (i % 40)}-0${1 + (i % 9)}-1${i % 10},${i % 2 ? 'female' : 'male'},2026-11-20`;
    const rows = [
      ['Ferritin', 8 + (i % 150), 'ug/L', '30 - 400'],
      ['Haemoglobin', 118 + (i % 40), 'g/L', '115 - 165'],
      ['Transferrin saturation', 12 + (i % 30), '%', '16 - 45'],
    ];
    const text = rows.map((row) => `${who},${row.join(',')}\n`).join('');
    if (!out.write(text)) await once(out, 'drain');
  }
  out.end();
  await once(out, 'finish');
}

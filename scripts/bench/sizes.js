// A folder arrives; the size of one letter in every language leaves, as PDF and as HTML.
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { letter, root } from './ours.js';

export async function measureSizes(folder) {
  const tags = readdirSync(join(root, 'locales'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);
  const sizes = [];
  for (const tag of tags) {
    const out = join(folder, `sizes-${tag}`);
    await letter(out, 'heavy-periods.json', 'html,pdf', tag);
    const [pdf, html] = ['pdf', 'html'].map(
      (ending) => statSync(join(out, `heavy-periods.${tag}.${ending}`)).size,
    );
    sizes.push({ tag, pdf, html });
  }
  const english = sizes.find(({ tag }) => tag === 'en');
  const kilobytes = (bytes) => `${(bytes / 1000).toFixed(0)} kB`;
  return [
    ['one letter in', 'PDF', 'times English', 'HTML'],
    ...sizes.map(({ tag, pdf, html }) => [
      tag,
      kilobytes(pdf),
      (pdf / english.pdf).toFixed(2),
      kilobytes(html),
    ]),
  ];
}

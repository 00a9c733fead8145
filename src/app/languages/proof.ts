// Units of a language arrive; pages for reviewers' eyes leave: the whole beside English, or without it to translate back.
import type { Language } from '../../letter/index.js';
import { escapeXml } from './write-xliff.js';
import { fillSamples } from './samples.js';
import type { Unit } from './units.js';

const style =
  'body{font:16px/1.6 sans-serif;margin:2em;max-width:75em}table{border-collapse:collapse;width:100%}' +
  'td,th{border:1px solid #999;padding:.4em .6em;text-align:start;vertical-align:top}td.own{font-size:1.15em}' +
  'td.key,td.state{font-size:.8em;color:#555}@media print{body{margin:0}tr{break-inside:avoid}}';

const unchecked = 'A computer drafted this translation. No trained person has checked it.';

/** Every message beside its English text, variables filled with samples. */
export function writeProof(language: Language, english: Language, units: readonly Unit[]): string {
  const rows = units.map(
    ({ key, source, target, state }) =>
      `<tr><td class="key">${escapeXml(key)}</td><td>${shown(english, key, source)}</td>${own(language, key, target)}<td class="state">${state}</td></tr>`,
  );
  const { name, tag } = language;
  return page(
    `${language.englishName} (${tag}): every message`,
    `<p>${units.some(({ state }) => state === 'draft-machine') ? unchecked : ''}</p>
<table><thead><tr><th>Key</th><th>English</th><th lang="${tag}">${escapeXml(name)}</th><th>State</th></tr></thead>
<tbody>
${rows.join('\n')}
</tbody></table>`,
  );
}

/** The blocks that must survive a translation back: the answer in short, safety, next steps. */
const deciding =
  /^(summary|urgency|help|sign|step|released|band|caution|tablets|gap|our-steps|your-steps)[.-]/;

const decidingUnits = (units: readonly Unit[]): readonly Unit[] =>
  units.filter(
    ({ namespace, key, target }) =>
      namespace === 'letter' &&
      target !== '' &&
      (deciding.test(key) || key.startsWith('food.caution.')),
  );

/** To be translated back by somebody who has not seen the English: numbers instead of keys, room to write. */
export function writeBackSheet(language: Language, units: readonly Unit[]): string {
  const rows = decidingUnits(units).map(
    ({ key, target }, index) =>
      `<tr><td class="key">${index + 1}</td>${own(language, key, target)}<td style="width:45%"></td></tr>`,
  );
  return page(
    `${language.englishName} (${language.tag}): to be translated back`,
    `<p>Translator, name and credential: ____________________ Date: ____________</p>
<p>Please write each sentence in English, as exactly as you can. Do not look at the English letter first.</p>
<table><thead><tr><th>No.</th><th lang="${language.tag}">${escapeXml(language.name)}</th><th>In English</th></tr></thead>
<tbody>
${rows.join('\n')}
</tbody></table>`,
  );
}

/** For whoever compares: the English text behind each number of the sheet. */
export function writeBackKey(english: Language, units: readonly Unit[]): string {
  const rows = decidingUnits(units).map(
    ({ key, source }, index) =>
      `<tr><td class="key">${index + 1}</td><td class="key">${escapeXml(key)}</td><td>${shown(english, key, source)}</td></tr>`,
  );
  return page(
    'The English text behind each number',
    `<table><tbody>\n${rows.join('\n')}\n</tbody></table>`,
  );
}

function own(language: Language, key: string, text: string): string {
  return `<td class="own" lang="${language.tag}" dir="${language.dir}">${shown(language, key, text)}</td>`;
}

function shown(language: Language, key: string, text: string): string {
  return escapeXml(fillSamples(language, key, text))
    .replaceAll('\u2066', '<bdi dir="ltr">')
    .replaceAll('\u2069', '</bdi>');
}

function page(title: string, body: string): string {
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escapeXml(title)}</title><style>${style}</style></head>
<body><h1>${escapeXml(title)}</h1>
${body}
</body></html>
`;
}

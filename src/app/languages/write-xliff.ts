// Units of one language arrive; an XLIFF 2.0 file leaves, with notes, glossary, limits and states (OASIS XLIFF 2.0).
import type { Namespace, ReviewState } from '../../letter/index.js';
import type { GlossaryTerm } from './shelf.js';
import type { Unit } from './units.js';

const namespaces = [
  'xmlns="urn:oasis:names:tc:xliff:document:2.0"',
  'xmlns:gls="urn:oasis:names:tc:xliff:glossary:2.0"',
  'xmlns:slr="urn:oasis:names:tc:xliff:sizerestriction:2.0"',
].join(' ');

/** XLIFF 2.0, section 4.7.1 (state of a segment). */
export const segmentStates = {
  'draft-machine': 'initial',
  translated: 'translated',
  revised: 'reviewed',
  signed: 'final',
  source: 'final',
} as const satisfies Record<ReviewState, string>;

/** Lengths are counted in code points (XLIFF 2.0, Size and Length Restriction module). */
const profiles =
  '<slr:profiles generalProfile="xliff:codepoints"><slr:normalization general="nfc"/></slr:profiles>';

/** @example writeXliff('pl', units).startsWith('<?xml') // true */
export function writeXliff(tag: string, units: readonly Unit[]): string {
  const files = [...new Set(units.map(({ namespace }) => namespace))];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<xliff ${namespaces} version="2.0" srcLang="en" trgLang="${tag}">`,
    ...files.map((namespace) => writeFile(namespace, units)),
    '</xliff>',
    '',
  ].join('\n');
}

function writeFile(namespace: Namespace, units: readonly Unit[]): string {
  const own = units.filter((unit) => unit.namespace === namespace);
  return [`<file id="${namespace}">`, profiles, ...own.map(writeUnit), '</file>'].join('\n');
}

function writeUnit({ key, source, target, state, note, limit, terms }: Unit): string {
  const size = limit === null ? '' : ` slr:sizeRestriction="${limit}"`;
  const stands = target === '' ? 'initial' : segmentStates[state];
  return [
    `<unit id="${escapeXml(key)}"${size}>`,
    ...(terms.length === 0
      ? []
      : [`<gls:glossary>${terms.map(writeTerm).join('')}</gls:glossary>`]),
    ...(note === null ? [] : [`<notes><note>${escapeXml(note)}</note></notes>`]),
    `<segment state="${stands}" subState="ironleaf:${state}">`,
    `<source xml:space="preserve">${inline(source)}</source>`,
    ...(target === '' ? [] : [`<target xml:space="preserve">${inline(target)}</target>`]),
    '</segment>',
    '</unit>',
  ].join('\n');
}

function writeTerm({ source, target, avoid, note }: GlossaryTerm): string {
  const words = [note, avoid.length === 0 ? '' : `Not: ${avoid.join(', ')}.`].filter(Boolean);
  const definition =
    words.length === 0 ? '' : `<gls:definition>${escapeXml(words.join(' '))}</gls:definition>`;
  return `<gls:glossEntry><gls:term>${escapeXml(source)}</gls:term><gls:translation>${escapeXml(target)}</gls:translation>${definition}</gls:glossEntry>`;
}

/** A variable is an inline code that tools keep whole. */
function inline(text: string): string {
  let count = 0;
  return text
    .split(/(\{\{?[^{}]*\}\}?)/)
    .map((part, index) => {
      if (index % 2 === 0) return escapeXml(part);
      count += 1;
      const name = escapeXml(part);
      return `<ph id="${count}" canDelete="no" canCopy="no" equiv="${name}" disp="${name}"/>`;
    })
    .join('');
}

export function escapeXml(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
}

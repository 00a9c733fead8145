// The person, the clinic and the options arrive; what stands above the letter's first line leaves.
import type { Band, Content, Said } from '../content.js';
import { english } from '../english.js';
import type { Told } from '../letter-input.js';
import { isolate, ltr, own, type Spoken } from '../say.js';

export function tellSender({ clinic }: Told): Content['sender'] {
  return {
    name: clinic.name,
    lines: clinic.addressLines.map((line) => isolate(own(line))),
    // The name of a file, as configurations have it, is for whoever reads files: here it draws nothing.
    logo: clinic.logo?.startsWith('data:') ? clinic.logo : null,
  };
}

export function tellAbout({ report, options, voice }: Told): readonly Said[] {
  const { name, birthDate, id } = report.patient;
  const { say, date } = voice;
  return [
    ...(name === null ? [] : [say('about.name', { name: own(name) })]),
    ...(birthDate === null ? [] : [say('about.born', { date: date(birthDate) })]),
    ...(name !== null || id === null ? [] : [say('about.number', { id: ltr(id) })]),
    say('about.test-date', { date: date(report.panel.collected) }),
    say('about.letter-date', { date: date(options.date) }),
  ];
}

export function tellGreeting({ report, addressee, voice: { say } }: Told): Said {
  const { name } = report.patient;
  if (addressee.kind === 'carer') {
    if (addressee.name !== null) return say('greeting.named', { name: own(addressee.name) });
    return name === null
      ? say('greeting.carer-unnamed')
      : say('greeting.carer', { name: own(name) });
  }
  return name === null ? say('greeting.unnamed') : say('greeting.named', { name: own(name) });
}

/**
 * Stamps: an example, a letter nobody checked, a translation nobody signed (said in both languages). Told last, when
 * every message of the letter is known.
 */
export function tellBands({ clinic, options, voice: { say, spoken } }: Told): readonly Band[] {
  const stamp = (said: Said): Band => ({ ...said, lang: null });
  const stamps = [
    ...(clinic.demo ? [stamp(say('band.example'))] : []),
    ...(options.checkedBy === null ? [stamp(say('band.unchecked'))] : []),
  ];
  if (spoken().every(isTrusted)) return stamps;
  return [
    ...stamps,
    stamp(say('band.translation')),
    {
      key: 'band.translation',
      text: isolate(ltr(english.letter['band.translation'])),
      lang: 'en',
    },
  ];
}

export function tellReleased({ options, urgent, voice: { say } }: Told): readonly Said[] {
  const released = options.released ?? null;
  if (!urgent || released === null) return [];
  return [
    say('released.why'),
    say('released.done', { by: own(released.by), done: own(released.done) }),
    say('released.help'),
  ];
}

/** English itself, or a translation that a qualified person signed. */
export const isTrusted = ({ state }: Spoken): boolean => state === 'source' || state === 'signed';

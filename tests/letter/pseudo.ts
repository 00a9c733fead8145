// English messages arrive; the same messages made up to look foreign leave: longer, accented or right to left.
import { type Language, readLanguage } from '../../src/letter/index.js';
import { englishFiles } from './fixtures.js';

const plain = 'aAcCeEiInNoOsSuUyYzZgGkKlLrRtT';
const accented = 'ậẬçÇễỄïÏñÑộỘşŞửỬỳỲžŽğĞķĶļĻřŘţŢ';
const hebrew = 'אבגדהוזחטיכלמנסעפצקרשתאבגדהו';

/** Texts grow by about a third when translated out of English; no source for more than 'common practice'. */
const growth = 0.35;

/** What stands between braces is a variable and stays as it is. */
function betweenVariables(text: string, change: (part: string) => string): string {
  return text
    .split(/(\{+[^}]*\}+)/)
    .map((part) => (part.startsWith('{') ? part : change(part)))
    .join('');
}

function accent(text: string): string {
  return [...text].map((letter) => accented.charAt(plain.indexOf(letter)) || letter).join('');
}

function turn(text: string): string {
  return text.replace(/[a-z]/gi, (letter) =>
    hebrew.charAt((letter.toLowerCase().charCodeAt(0) - 97) % hebrew.length),
  );
}

/**
 * Accents that stack, a third more length, and brackets that show where a message begins and ends.
 * @example longer('Dear {{name}},') // '[Đeậř {{name}}, ẬẬẬ]'
 */
export function longer(text: string): string {
  const words = text.replace(/\{+[^}]*\}+/g, '').length;
  const padding = 'ẫỷỢ žűĝ '
    .repeat(Math.ceil((words * growth) / 8))
    .slice(0, Math.ceil(words * growth));
  return `[${betweenVariables(text, accent)} ${padding.trim()}]`;
}

/** The same letter right to left: Hebrew letters that mean nothing. */
export function turned(text: string): string {
  return betweenVariables(text, turn);
}

/**
 * English with every message changed, read as a language of its own.
 * @example pseudoLanguage('en-XA', 'ltr', longer).dir // 'ltr'
 */
export function pseudoLanguage(
  tag: string,
  dir: 'ltr' | 'rtl',
  change: (text: string) => string,
): Language {
  const files = Object.entries(englishFiles()).map(([name, messages]) => {
    if (name === 'meta') return [name, { ...record(messages), tag, dir, intl: 'en-GB' }];
    const changed = Object.entries(record(messages)).map(([key, text]) => [
      key,
      change(String(text)),
    ]);
    return [name, Object.fromEntries(changed)];
  });
  const read = readLanguage(tag, Object.fromEntries(files));
  if (!read.ok) throw new Error(JSON.stringify(read.problems.slice(0, 3)));
  return read.value;
}

function record(value: unknown): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(value ?? {}));
}

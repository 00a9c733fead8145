// A place in a catalogue arrives; the English text it is translated from leaves.
import { english, type Namespace } from './english.js';

const pluralEnding = /_(zero|one|two|few|many|other)$/;

/**
 * The English text of a message; a plural form that English lacks is translated from its last form.
 * @returns null for a key that the English file does not hold.
 * @example sourceOf('letter', 'gap.calcium_few') // 'Leave {{count}} hours between iron and calcium tablets.'
 */
export function sourceOf(namespace: Namespace, key: string): string | null {
  const messages: Readonly<Record<string, string>> = english[namespace];
  return messages[key] ?? messages[key.replace(pluralEnding, '_other')] ?? null;
}

// What a letter can be asked for on the command line: the options that letter and mailing share, and how they are read.
import type { Argv } from 'yargs';
import { hasStyles, type ScriptStyle, scriptStyles } from '../../render/script-style.js';
import { analogies } from '../../terms.js';
import type { Format } from '../formats.js';
import { designs } from '../kit.js';
import { Stop, status } from '../status.js';

export function letterOptions<T>(yargs: Argv<T>) {
  return yargs
    .option('language', { type: 'string', default: 'en', describe: 'Language of the letter' })
    .option('beside', { type: 'string', describe: 'Second language, side by side' })
    .option('large-print', { type: 'boolean', default: false, describe: '18 point type' })
    .option('script-style', {
      choices: scriptStyles,
      describe: 'Urdu: nastaliq for the eye, naskh where a machine reads it out',
    })
    .option('compact', { type: 'boolean', default: false, describe: '12 point type' })
    .option('easy-read', {
      type: 'boolean',
      default: false,
      describe: 'Short sentences, no analogy',
    })
    .option('signed-only', {
      type: 'boolean',
      default: false,
      describe: 'Only translations that a qualified person signed',
    })
    .option('paper', { choices: ['A4', 'Letter'] as const, default: 'A4' as const })
    .option('analogy', { choices: [...analogies, 'off'] as const, default: analogies[0] })
    .option('food', { type: 'boolean', default: true, describe: '--no-food leaves food out' })
    .option('design', {
      choices: designs,
      default: designs[0],
      describe: 'short: one page in 12 point, without pictures, changes and food',
    })
    .option('templates', {
      type: 'string',
      describe: 'Folder of own templates; see templates check',
    })
    .option('config', { type: 'string', describe: 'File with the clinic’s details' })
    .option('demo', {
      type: 'boolean',
      default: false,
      describe: 'Invented clinic; stamped example',
    })
    .option('date', { type: 'string', describe: 'Date of the letter, YYYY-MM-DD' });
}

/** @example formatsOf('html,pdf', formats) // ['html', 'pdf'] */
export function formatsOf<F extends Format>(written: string, allowed: readonly F[]): readonly F[] {
  const wished = written.split(',').map((word) => word.trim());
  const known = allowed.filter((format) => wished.includes(format));
  if (known.length !== new Set(wished).size)
    throw new Stop(status.usage, [`--format: expected some of ${allowed.join(',')}.`]);
  return known;
}

/** Words given to an option, or null; an option without words is a mistake. */
export function named(text: string | undefined, option: string): string | null {
  if (text === undefined) return null;
  if (text.trim() === '') throw new Stop(status.usage, [`${option}: expected words, found none.`]);
  return text.trim();
}

/**
 * The style of the script, where the letter has a language that is printed in more than one.
 * @example scriptStyleOf('naskh', ['ur', 'en']) // { scriptStyle: 'naskh' }
 */
export function scriptStyleOf(
  style: ScriptStyle | undefined,
  languages: readonly (string | null | undefined)[],
): { readonly scriptStyle?: ScriptStyle } {
  if (style === undefined) return {};
  if (!languages.some((tag) => typeof tag === 'string' && hasStyles(tag)))
    throw new Stop(status.usage, [
      '--script-style: only Urdu (ur) is printed in more than one style; leave it out.',
    ]);
  return { scriptStyle: style };
}

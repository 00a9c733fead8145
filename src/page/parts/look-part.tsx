// How the letter is to look arrives; the user's wishes leave.
import { analogies } from '../../terms.js';
import type { Desk } from '../desk.js';
import type { Say } from '../words.js';
import { SelectField, TextField, Tick } from './fields.js';

export type LetterLanguage = { readonly tag: string; readonly name: string };

type Props = {
  readonly say: Say;
  readonly desk: Desk;
  readonly languages: readonly LetterLanguage[];
  readonly onDesk: (some: Partial<Desk>) => void;
};

export function LookPart({ say, desk, languages, onDesk }: Props) {
  const tongues = languages.map(({ tag, name }) => ({ value: tag, label: name, lang: tag }));
  return (
    <section class="card" aria-labelledby="look-heading">
      <h2 id="look-heading">{say('look.heading')}</h2>
      <div class="grid">
        <SelectField
          label={say('look.language')}
          value={desk.language}
          choices={tongues}
          onValue={(language) => onDesk({ language })}
        />
        <SelectField
          label={say('look.beside')}
          value={desk.beside ?? ''}
          onValue={(tag) => onDesk({ beside: tag || null })}
          choices={[
            { value: '', label: say('look.beside.none') },
            ...tongues.filter(({ value }) => value !== desk.language),
          ]}
        />
        <SelectField
          label={say('look.analogy')}
          value={desk.analogy}
          onValue={(value) =>
            onDesk({ analogy: analogies.find((each) => each === value) ?? 'off' })
          }
          choices={[...analogies, 'off' as const].map((value) => ({
            value,
            label: say(`look.analogy.${value}`),
          }))}
        />
        <SelectField
          label={say('look.paper')}
          value={desk.form.paper}
          choices={[
            { value: 'A4', label: 'A4' },
            { value: 'Letter', label: 'Letter' },
          ]}
          onValue={(value) =>
            onDesk({ form: { ...desk.form, paper: value === 'Letter' ? 'Letter' : 'A4' } })
          }
        />
      </div>
      <Tick
        label={say('look.large')}
        on={desk.form.size === 'large'}
        onChange={(large) => onDesk({ form: { ...desk.form, size: large ? 'large' : 'standard' } })}
      />
      <Tick
        label={say('look.easy')}
        on={desk.easyRead}
        onChange={(easyRead) => onDesk({ easyRead })}
      />
      <TextField
        label={say('look.checked')}
        value={desk.checkedBy}
        hint={say('look.unchecked')}
        onValue={(checkedBy) => onDesk({ checkedBy })}
      />
    </section>
  );
}

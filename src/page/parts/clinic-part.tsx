// The clinic's details arrive; what the user typed leaves. None has a default, for a wrong number could cost a life.
import { useRef, useState } from 'preact/hooks';
import { typed } from '../clinic.js';
import type { ClinicForm } from '../desk.js';
import type { Say } from '../words.js';
import { TextField, Tick } from './fields.js';

type Props = {
  readonly say: Say;
  readonly form: ClinicForm;
  readonly demo: boolean;
  readonly missing: readonly (keyof ClinicForm)[];
  readonly remembered: boolean;
  readonly onForm: (form: ClinicForm) => void;
  readonly onExample: () => void;
  readonly onRemember: (on: boolean) => void;
};

const fields = [
  { field: 'name' },
  { field: 'address', lines: 3 },
  { field: 'phone', type: 'tel' },
  { field: 'hours' },
  { field: 'emergency' },
  { field: 'maternity', type: 'tel' },
  { field: 'closed' },
  { field: 'interpreter', type: 'tel' },
] as const;

export function ClinicPart({
  say,
  form,
  demo,
  missing,
  remembered,
  onForm,
  onExample,
  onRemember,
}: Props) {
  // Folded by the user alone: folding once the last field has its first digit would cut a phone number short.
  const [open, setOpen] = useState(missing.length > 0);
  const heading = useRef<HTMLHeadingElement>(null);
  return (
    <section class="card" aria-labelledby="clinic-heading">
      <h2 id="clinic-heading" tabIndex={-1} ref={heading}>
        {say('clinic.heading')}
        {form.name === '' ? null : (
          <>
            {': '}
            <bdi>{form.name}</bdi>
          </>
        )}
      </h2>
      {missing.length === 0 ? null : (
        <>
          <p>{say('clinic.needed')}</p>
          <button
            type="button"
            onClick={() => {
              onExample();
              setOpen(false);
              heading.current?.focus();
            }}
          >
            {say('clinic.example')}
          </button>
        </>
      )}
      {demo ? <p class="notice">{say('clinic.example-on')}</p> : null}
      <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{say('clinic.heading')}</summary>
        <div class="grid">
          {fields.map((each) => (
            <TextField
              key={each.field}
              label={say(`clinic.${each.field}`)}
              value={form[each.field]}
              {...('lines' in each ? { lines: each.lines } : {})}
              {...('type' in each ? { type: each.type } : {})}
              onValue={(value) => onForm(typed(form, each.field, value))}
            />
          ))}
        </div>
        {form.interpreter === '' ? null : (
          <Tick
            label={say('clinic.free')}
            on={form.free}
            onChange={(free) => onForm({ ...form, free })}
          />
        )}
        <Tick
          label={
            <>
              {say('clinic.remember')} <span class="quiet">{say('clinic.remember-note')}</span>
            </>
          }
          on={remembered}
          onChange={onRemember}
        />
      </details>
    </section>
  );
}

// Labels, values and what to do with a new one arrive; fields big enough for a thumb leave.
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

type TextProps = {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly type?: 'text' | 'date' | 'tel';
  readonly lines?: number;
  readonly hint?: string | null;
  readonly wrong?: string | null;
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
};

export function TextField({
  label,
  value,
  onValue,
  type,
  lines,
  hint,
  wrong,
  inputMode,
}: TextProps) {
  const id = useId();
  const told = wrong ?? hint ?? null;
  const common = {
    id,
    value,
    autoComplete: 'off',
    spellcheck: false,
    'aria-describedby': told === null ? undefined : `${id}-told`,
    'aria-invalid': wrong ? true : undefined,
  };
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {lines === undefined ? (
        <input
          {...common}
          {...inputs[type ?? 'text']}
          inputMode={inputMode}
          onInput={(event) => onValue(event.currentTarget.value)}
        />
      ) : (
        <textarea
          {...common}
          rows={lines}
          dir="auto"
          onInput={(event) => onValue(event.currentTarget.value)}
        />
      )}
      {told === null ? null : (
        <p class={wrong ? 'told wrong' : 'told'} id={`${id}-told`}>
          {told}
        </p>
      )}
    </div>
  );
}

const inputs = {
  text: { type: 'text', dir: 'auto' },
  tel: { type: 'tel', dir: 'auto' },
  date: { type: 'date', dir: 'ltr' },
} as const;

type Choice = { readonly value: string; readonly label: string; readonly lang?: string };

export function SelectField(props: {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly onValue: (value: string) => void;
}) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <select
        id={id}
        value={props.value}
        onChange={(event) => props.onValue(event.currentTarget.value)}
      >
        {props.choices.map(({ value, label, lang }) => (
          <option key={value} value={value} lang={lang} selected={value === props.value}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
}

export function Tick(props: {
  readonly label: ComponentChildren;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}) {
  return (
    <label class="tick">
      <input
        type="checkbox"
        checked={props.on}
        onChange={(event) => props.onChange(event.currentTarget.checked)}
      />
      <span>{props.label}</span>
    </label>
  );
}

export function Radios(props: {
  readonly legend: string;
  readonly value: string | null;
  readonly wrong?: string | null;
  readonly choices: readonly Choice[];
  readonly onValue: (value: string) => void;
}) {
  const name = useId();
  return (
    <fieldset class="radios">
      <legend>
        {props.legend}
        {props.wrong ? <span class="told wrong">{props.wrong}</span> : null}
      </legend>
      {props.choices.map(({ value, label }) => (
        <label key={value} class="tick">
          <input
            type="radio"
            name={name}
            value={value}
            checked={props.value === value}
            onChange={() => props.onValue(value)}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}

export function Ticks<T extends string>(props: {
  readonly legend: string;
  readonly members: readonly T[];
  readonly on: readonly T[];
  readonly name: (member: T) => string;
  readonly onChange: (on: readonly T[]) => void;
}) {
  const { members, on, name } = props;
  return (
    <fieldset class="ticks">
      <legend>{props.legend}</legend>
      {members.map((member) => (
        <Tick
          key={member}
          label={name(member)}
          on={on.includes(member)}
          onChange={(ticked) =>
            props.onChange(ticked ? [...on, member] : on.filter((each) => each !== member))
          }
        />
      ))}
    </fieldset>
  );
}

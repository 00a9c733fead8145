// The person as the results and the user say arrives; only what changes the letter is asked for, and leaves.
import { readAge } from '../../intake/index.js';
import {
  type Bleeding,
  type Condition,
  diets,
  dietAvoids,
  type Medicine,
  sexes,
  type Symptom,
} from '../../terms.js';
import type { Person } from '../desk.js';
import { monthsIn } from '../months-in.js';
import type { Need, Reading } from '../read-desk.js';
import { type PageTongue, sayMember } from '../words.js';
import { Radios, SelectField, TextField, Tick, Ticks } from './fields.js';

const symptoms: readonly Symptom[] = [
  'breathless-at-rest',
  'chest-pain',
  'fainting',
  'heart-racing-at-rest',
  'confusion',
  'limp-or-very-sleepy-child',
  'tiredness',
  'breathless-on-effort',
  'dizziness',
  'fever',
  'weight-loss',
  'change-in-bowel-habit',
];
const bleedings: readonly Bleeding[] = [
  'none',
  'heavy-periods',
  'black-or-bloody-stool',
  'vomited-blood',
  'very-heavy-now',
  'recent-injury-or-surgery',
  'recent-birth',
  'blood-donation',
];
const conditions: readonly Condition[] = [
  'kidney-disease',
  'heart-failure',
  'inflammatory-bowel-disease',
  'coeliac-disease',
  'liver-disease',
  'haemochromatosis',
  'iron-overload',
  'thalassaemia-major',
  'thalassaemia-trait',
  'sickle-cell-disease',
  'diabetes',
  'chronic-inflammation',
];
const medicines: readonly Medicine[] = [
  'iron-tablets',
  'levothyroxine',
  'tetracycline',
  'quinolone',
  'levodopa',
  'bisphosphonate',
  'antacid',
  'calcium',
  'proton-pump-inhibitor',
  'warfarin',
  'anticoagulant',
  'nsaid',
];

type Props = {
  readonly tongue: PageTongue;
  readonly person: Person;
  readonly reading: Reading;
  readonly today: string;
  readonly onPerson: (person: Person) => void;
};

export function PersonPart({ tongue: { tag, say }, person, reading, today, onPerson }: Props) {
  const set = (some: Partial<Person>) => onPerson({ ...person, ...some });
  const { written } = reading;
  const sex = person.sex ?? sexes.find((each) => each === written?.patient.sex) ?? null;
  const needed = (need: Need) =>
    reading.needs.includes(need) ? say('letter.missing', { what: say(`need.${need}`) }) : null;
  const babysAge = { months: monthsIn(tag, 8) };
  const ageWrong = person.age.trim() !== '' && readAge(person.age) === null;
  return (
    <section class="card" aria-labelledby="person-heading">
      <h2 id="person-heading">{say('person.heading')}</h2>
      <Radios
        legend={say('person.sex')}
        value={sex}
        wrong={needed('sex')}
        choices={sexes.map((value) => ({ value, label: say(`person.sex.${value}`) }))}
        onValue={(value) => set({ sex: sexes.find((each) => each === value) ?? null })}
      />
      <div class="grid">
        <TextField
          label={say('person.age', babysAge)}
          value={person.age}
          onValue={(age) => set({ age })}
          wrong={ageWrong ? say('person.age-wrong', babysAge) : null}
          hint={
            written?.patient.birthDate
              ? say('person.from-file', { facts: `\u2066${written.patient.birthDate}\u2069` })
              : null
          }
        />
        <div>
          <TextField
            label={say('person.collected')}
            type="date"
            value={person.collected || (written?.panel.collected ?? '')}
            wrong={needed('collected')}
            onValue={(collected) => set({ collected })}
          />
          <button type="button" onClick={() => set({ collected: today })}>
            {say('person.today')}
          </button>
        </div>
        {sex === 'male' ? null : (
          <TextField
            label={say('person.weeks')}
            value={person.weeks}
            inputMode="numeric"
            onValue={(weeks) => set({ weeks })}
          />
        )}
        <TextField
          label={say('person.name')}
          value={person.name}
          onValue={(name) => set({ name })}
          hint={
            written?.patient.name && person.name === ''
              ? say('person.from-file', { facts: written.patient.name })
              : null
          }
        />
        <SelectField
          label={say('person.diet')}
          value={person.diet ?? ''}
          onValue={(value) => set({ diet: diets.find((each) => each === value) ?? null })}
          choices={[
            { value: '', label: say('person.diet.none') },
            ...diets.map((value) => ({ value, label: sayMember(say, 'diet', value) })),
          ]}
        />
      </div>
      <Tick
        label={say('person.low-cost')}
        on={person.lowCost}
        onChange={(lowCost) => set({ lowCost })}
      />
      <details>
        <summary>{say('person.more')}</summary>
        <Ticks
          legend={say('person.symptoms')}
          members={symptoms}
          on={person.symptoms}
          name={(member) => sayMember(say, 'symptom', member)}
          onChange={(on) => set({ symptoms: on })}
        />
        <Ticks
          legend={say('person.bleeding')}
          members={bleedings}
          on={person.bleeding}
          name={(member) => sayMember(say, 'bleeding', member)}
          onChange={(on) => set({ bleeding: on })}
        />
        <Ticks
          legend={say('person.conditions')}
          members={conditions}
          on={person.conditions}
          name={(member) => sayMember(say, 'condition', member)}
          onChange={(on) => set({ conditions: on })}
        />
        <Ticks
          legend={say('person.medicines')}
          members={medicines}
          on={person.medicines}
          name={(member) => sayMember(say, 'medicine', member)}
          onChange={(on) => set({ medicines: on })}
        />
        <Ticks
          legend={say('person.avoids')}
          members={dietAvoids}
          on={person.avoids}
          name={(member) => sayMember(say, 'avoid', member)}
          onChange={(on) => set({ avoids: on })}
        />
      </details>
    </section>
  );
}

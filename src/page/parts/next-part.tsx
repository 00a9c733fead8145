// The program's suggestions and the clinician's choices arrive; new choices leave.
import type { Advice } from '../../advise/advice.js';
import { type NextStep, nextSteps } from '../../terms.js';
import type { ChosenStep, Desk } from '../desk.js';
import { type Say, sayMember } from '../words.js';
import { TextField, Tick } from './fields.js';

type Props = {
  readonly say: Say;
  readonly desk: Desk;
  readonly suggested: Advice | null;
  readonly onDesk: (some: Partial<Desk>) => void;
};

/** This step and the prescription are one fact, with one tick: a letter must not tell of tablets that nobody gave. */
const tablets = 'take-tablets-as-prescribed';

export function NextPart({ say, desk, suggested, onDesk }: Props) {
  const planned = suggested?.steps ?? [];
  const defaults = planned.map(({ step, by }): ChosenStep => ({ step, by, words: null }));
  const chosen = desk.steps ?? defaults;
  const ticked = (step: NextStep, on: boolean): readonly ChosenStep[] => {
    const others = chosen.filter((each) => each.step !== step);
    const usual = defaults.find((each) => each.step === step);
    return on ? [...others, usual ?? { step, by: null, words: null }] : others;
  };
  const choose = (step: NextStep, on: boolean) =>
    step === tablets
      ? onDesk({
          tablets: { ...desk.tablets, prescribed: on },
          // Suggestions follow the prescription by themselves.
          steps: desk.steps === null ? null : ticked(step, on),
        })
      : onDesk({ steps: ticked(step, on) });
  return (
    <section class="card" aria-labelledby="next-heading">
      <h2 id="next-heading">{say('next.heading')}</h2>
      <fieldset class="ticks">
        <legend class="hidden">{say('next.heading')}</legend>
        {nextSteps.map((step) => (
          <div key={step} class="step">
            <Tick
              label={
                <>
                  {step === tablets ? say('next.tablets') : sayMember(say, 'step', step)}
                  {planned.some((each) => each.step === step && each.suggested) ? (
                    <span class="quiet"> ({say('next.suggested')})</span>
                  ) : null}
                </>
              }
              on={
                step === tablets
                  ? desk.tablets.prescribed
                  : chosen.some((each) => each.step === step)
              }
              onChange={(on) => choose(step, on)}
            />
            {step === tablets && desk.tablets.prescribed ? (
              <TextField
                label={say('next.dose')}
                value={desk.tablets.dose}
                onValue={(dose) => onDesk({ tablets: { ...desk.tablets, dose } })}
              />
            ) : null}
            <Details
              say={say}
              chosen={chosen.find((each) => each.step === step)}
              onChange={(next) =>
                onDesk({ steps: chosen.map((each) => (each.step === step ? next : each)) })
              }
            />
          </div>
        ))}
      </fieldset>
      <Tick
        label={say('next.no-food')}
        on={desk.noFood}
        onChange={(noFood) => onDesk({ noFood })}
      />
    </section>
  );
}

/** By when, and the clinician's own words; nothing of a step that was not chosen. */
function Details({
  say,
  chosen,
  onChange,
}: {
  readonly say: Say;
  readonly chosen: ChosenStep | undefined;
  readonly onChange: (next: ChosenStep) => void;
}) {
  if (chosen === undefined) return null;
  return (
    <fieldset class="row" aria-label={sayMember(say, 'step', chosen.step)}>
      <TextField
        label={say('next.by')}
        type="date"
        value={chosen.by ?? ''}
        onValue={(by) => onChange({ ...chosen, by: by || null })}
      />
      <TextField
        label={say('next.words')}
        value={chosen.words ?? ''}
        onValue={(words) => onChange({ ...chosen, words })}
      />
    </fieldset>
  );
}

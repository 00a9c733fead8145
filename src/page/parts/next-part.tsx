// The program's suggestions and the clinician's choices arrive; new choices leave.
import type { Advice } from '../../advise/advice.js';
import { nextSteps } from '../../terms.js';
import type { ChosenStep, Desk } from '../desk.js';
import { type Say, sayMember } from '../words.js';
import { TextField, Tick } from './fields.js';

type Props = {
  readonly say: Say;
  readonly desk: Desk;
  readonly suggested: Advice | null;
  readonly onDesk: (some: Partial<Desk>) => void;
};

export function NextPart({ say, desk, suggested, onDesk }: Props) {
  const defaults: readonly ChosenStep[] = (suggested?.steps ?? []).map(({ step, by }) => ({
    step,
    by,
    words: null,
  }));
  const chosen = desk.steps ?? defaults;
  const put = (steps: readonly ChosenStep[]) => onDesk({ steps });
  return (
    <section class="card" aria-labelledby="next-heading">
      <h2 id="next-heading">{say('next.heading')}</h2>
      <fieldset class="ticks">
        <legend class="hidden">{say('next.heading')}</legend>
        {nextSteps.map((step) => {
          const on = chosen.find((each) => each.step === step);
          const isSuggested = defaults.some((each) => each.step === step);
          const change = (some: Partial<ChosenStep>) =>
            put(chosen.map((each) => (each.step === step ? { ...each, ...some } : each)));
          return (
            <div key={step} class="step">
              <Tick
                label={
                  <>
                    {sayMember(say, 'step', step)}
                    {isSuggested ? <span class="quiet"> ({say('next.suggested')})</span> : null}
                  </>
                }
                on={on !== undefined}
                onChange={(ticked) =>
                  put(
                    ticked
                      ? [
                          ...chosen,
                          defaults.find((each) => each.step === step) ?? {
                            step,
                            by: null,
                            words: null,
                          },
                        ]
                      : chosen.filter((each) => each.step !== step),
                  )
                }
              />
              {on === undefined ? null : (
                <fieldset class="row" aria-label={sayMember(say, 'step', step)}>
                  <TextField
                    label={say('next.by')}
                    type="date"
                    value={on.by ?? ''}
                    onValue={(by) => change({ by: by || null })}
                  />
                  <TextField
                    label={say('next.words')}
                    value={on.words ?? ''}
                    onValue={(words) => change({ words })}
                  />
                </fieldset>
              )}
            </div>
          );
        })}
      </fieldset>
      <Tick
        label={say('next.tablets')}
        on={desk.tablets.prescribed}
        onChange={(prescribed) => onDesk({ tablets: { ...desk.tablets, prescribed } })}
      />
      {desk.tablets.prescribed ? (
        <TextField
          label={say('next.dose')}
          value={desk.tablets.dose}
          onValue={(dose) => onDesk({ tablets: { ...desk.tablets, dose } })}
        />
      ) : null}
      <Tick
        label={say('next.no-food')}
        on={desk.noFood}
        onChange={(noFood) => onDesk({ noFood })}
      />
    </section>
  );
}

// A reading arrives; a line for each result leaves, with its state in words, its question and a way to answer.
import { useState } from 'preact/hooks';
import { type Problem, sayProblem, visible } from '../../problem.js';
import type { Doubt } from '../../report/report.js';
import { readUnit, unitsOf } from '../../knowledge/units.js';
import { type Analyte, analytes } from '../../terms.js';
import { askDoubt, doubtOf, possibleUnits, tellFault } from '../ask.js';
import type { Correction } from '../desk.js';
import type { Reading } from '../read-desk.js';
import { listed, type PageTongue, type Say, sayMember } from '../words.js';
import { SelectField, TextField } from './fields.js';

type Props = {
  readonly tongue: PageTongue;
  readonly reading: Reading;
  readonly confirmed: readonly Analyte[];
  readonly onConfirm: (analyte: Analyte) => void;
  readonly onCorrect: (analyte: Analyte, correction: Correction) => void;
};

type State = 'ok' | 'doubtful' | 'problem' | 'ignored';
const signs: Readonly<Record<State, string>> = {
  ok: '✓',
  doubtful: '?',
  problem: '✗',
  ignored: '–',
};

type Line = {
  readonly analyte: Analyte;
  readonly value: string;
  readonly unit: string;
  readonly range: string;
  readonly state: State;
  readonly doubt: Doubt | null;
  readonly fault: Problem | null;
  /** Units the sheet may have said, one press away. */
  readonly likely: readonly string[];
};

/** The deciding tests: what is not there is said, never passed over. */
const deciding: readonly Analyte[] = ['haemoglobin', 'ferritin', 'transferrin-saturation', 'crp'];

export function UnderstoodPart({ tongue, reading, confirmed, onConfirm, onCorrect }: Props) {
  const { say } = tongue;
  const lines = linesOf(reading, confirmed);
  const loose = reading.problems.filter(
    (problem) => !lines.some((line) => belongs(problem.place.field, line.analyte)),
  );
  const counted = (state: State) => String(lines.filter((line) => line.state === state).length);
  const missing =
    lines.length === 0
      ? []
      : deciding.filter((test) => !lines.some((line) => line.analyte === test));
  return (
    <section class="card" aria-labelledby="understood-heading">
      <h2 id="understood-heading">{say('understood.heading')}</h2>
      <p role="status">
        {lines.length === 0 && reading.problems.length === 0
          ? say('understood.none')
          : say('understood.count', {
              ok: counted('ok'),
              doubtful: counted('doubtful'),
              problem: String(
                lines.filter(({ state }) => state === 'problem').length + loose.length,
              ),
            })}
      </p>
      {lines.some(({ state }) => state === 'doubtful') ? (
        <p class="notice">{say('understood.answer')}</p>
      ) : null}
      <ul class="lines">
        {lines.map((line) => (
          <li key={line.analyte} class={`line ${line.state}`} tabIndex={-1}>
            <p>
              <span class="sign" aria-hidden="true">
                {signs[line.state]}
              </span>
              <strong>{sayMember(say, 'test', line.analyte)}</strong>{' '}
              <bdi dir="ltr">{visible(`${line.value} ${line.unit}`.trim())}</bdi>{' '}
              {line.range === '' ? null : (
                <bdi dir="ltr" class="quiet">
                  ({visible(line.range)})
                </bdi>
              )}{' '}
              <span class="state">
                {confirmed.includes(line.analyte) && line.state === 'ok'
                  ? say('understood.confirmed')
                  : say(`understood.${line.state}`)}
              </span>
            </p>
            <Why tongue={tongue} line={line} />
            {reading.written === null ? null : (
              <p class="row">
                {line.likely.map((unit) => (
                  <button
                    key={unit}
                    type="button"
                    onClick={(event) => {
                      focusLine(event);
                      onCorrect(line.analyte, { value: line.value, unit });
                    }}
                  >
                    {say('understood.use-unit', { unit })}
                  </button>
                ))}
                {line.state === 'doubtful' ? (
                  <button
                    type="button"
                    onClick={(event) => {
                      focusLine(event);
                      onConfirm(line.analyte);
                    }}
                  >
                    {say('understood.stands')}
                  </button>
                ) : null}
              </p>
            )}
            {reading.written === null ? null : (
              <Correct
                say={say}
                line={line}
                onCorrect={(correction) => onCorrect(line.analyte, correction)}
              />
            )}
          </li>
        ))}
        {loose.map((problem) => (
          <li key={sayProblem(problem)} class="line problem">
            <p>
              <span class="sign" aria-hidden="true">
                {signs.problem}
              </span>
              <span class="state">{say('understood.problem')}</span>
            </p>
            <p class="why" lang="en" dir="ltr">
              {sayProblem(problem)}
            </p>
          </li>
        ))}
      </ul>
      {missing.length === 0 ? null : (
        <p class="missing">
          <span class="sign" aria-hidden="true">
            ○
          </span>
          {say('understood.missing-list', {
            tests: listed(
              tongue.tag,
              missing.map((test) => sayMember(say, 'test', test)),
            ),
          })}
        </p>
      )}
      {reading.ignored.length === 0 ? null : (
        <details>
          <summary>
            {say('understood.ignored')} ({reading.ignored.length})
          </summary>
          <ul lang="en" dir="ltr">
            {reading.ignored.map((problem) => (
              <li key={sayProblem(problem)}>{sayProblem(problem)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** An answered question goes, and its buttons with it: the line keeps the focus. */
function focusLine({ currentTarget }: { readonly currentTarget: HTMLElement }): void {
  currentTarget.closest('li')?.focus();
}

/** The question or the fault of one line. */
function Why({ tongue, line }: { readonly tongue: PageTongue; readonly line: Line }) {
  const asked =
    line.fault !== null
      ? tellFault(tongue, line, line.fault)
      : line.doubt !== null
        ? askDoubt(tongue, line, line.doubt)
        : null;
  if (asked === null) return null;
  return (
    <p class="why" {...(asked.english ? english : {})}>
      {asked.text}
    </p>
  );
}

const english = { lang: 'en', dir: 'ltr' } as const;

function Correct({
  say,
  line,
  onCorrect,
}: {
  readonly say: Say;
  readonly line: Line;
  readonly onCorrect: (correction: Correction) => void;
}) {
  const [typed, setTyped] = useState<Correction | null>(null);
  const now = typed ?? { value: line.value, unit: readUnit(line.unit) ?? line.unit };
  const codes = unitsOf(line.analyte).map(({ code }) => code);
  const choices = [...new Set([now.unit, ...codes])];
  return (
    <details class="correct" open={line.state === 'problem'}>
      <summary>{say('understood.correct', { test: sayMember(say, 'test', line.analyte) })}</summary>
      <div class="row">
        <TextField
          label={say('results.value')}
          value={now.value}
          inputMode="decimal"
          onValue={(value) => setTyped({ ...now, value })}
        />
        <SelectField
          label={say('results.unit')}
          value={now.unit}
          onValue={(unit) => setTyped({ ...now, unit })}
          choices={choices.map((code) => ({
            value: code,
            label: code === '' ? say('results.choose-unit') : code,
          }))}
        />
        <button
          type="button"
          onClick={(event) => {
            focusLine(event);
            onCorrect(now);
            setTyped(null);
          }}
        >
          {say('understood.apply')}
        </button>
      </div>
    </details>
  );
}

function linesOf(
  { written, partly, understood, problems }: Reading,
  confirmed: readonly Analyte[],
): readonly Line[] {
  const results = written?.panel.results ?? partly;
  return analytes.flatMap((analyte) => {
    const result = results.find((each) => each.analyte === analyte);
    if (result === undefined) return [];
    const measured =
      understood?.report.panel.results.find((each) => each.analyte === analyte) ?? null;
    const problem = problems.find(
      ({ place }) => belongs(place.field, analyte) || samePlace(place, result.place),
    );
    const written = { analyte, value: result.value, unit: result.unit ?? '' };
    // A line is never called understood because another one kept the report from being measured.
    const isAsked = understood === null && problem === undefined && !confirmed.includes(analyte);
    const doubt = measured?.doubt ?? (isAsked ? doubtOf(written) : null);
    const state: State = problem !== undefined ? 'problem' : doubt ? 'doubtful' : 'ok';
    return [
      {
        analyte,
        value: `${result.comparator ?? ''}${result.value}`,
        unit: result.unit ?? '',
        range: measured?.copied.interval ?? result.interval?.text ?? '',
        state,
        doubt,
        fault: problem ?? null,
        likely: likelyUnits(analyte, result.value, problem, doubt),
      },
    ];
  });
}

function likelyUnits(
  analyte: Analyte,
  value: string,
  problem: Problem | undefined,
  doubt: Doubt | null,
): readonly string[] {
  if (problem?.code === 'value-impossible') return possibleUnits(analyte, value);
  return doubt?.likelyUnit ? [doubt.likelyUnit] : [];
}

function belongs(field: string | null, analyte: Analyte): boolean {
  return field?.split('.').includes(analyte) ?? false;
}

function samePlace(a: Reading['problems'][number]['place'], b: typeof a): boolean {
  if (a.row !== null) return a.row === b.row;
  return a.field !== null && b.field !== null && a.field.startsWith(b.field);
}

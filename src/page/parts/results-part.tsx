// Where results come in: pasted, dropped, opened or typed; what the user did leaves as a new source.
import { useRef } from 'preact/hooks';
import { unitsOf } from '../../knowledge/units.js';
import type { Analyte } from '../../terms.js';
import type { FormRow, Source } from '../desk.js';
import type { Reading } from '../read-desk.js';
import { type Say, sayMember } from '../words.js';
import { Radios, SelectField, TextField } from './fields.js';

const formTests: readonly Analyte[] = [
  'haemoglobin',
  'ferritin',
  'transferrin-saturation',
  'serum-iron',
  'transferrin',
  'crp',
  'mcv',
];
const emptyRow: FormRow = { value: '', unit: '', low: '', high: '' };

type Props = {
  readonly say: Say;
  readonly source: Source;
  readonly reading: Reading;
  readonly which: number;
  readonly onSource: (source: Source) => void;
  readonly onWhich: (which: number) => void;
};

export function ResultsPart({ say, source, reading, which, onSource, onWhich }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    onSource({ kind: 'file', name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
  };
  return (
    <section
      class="card"
      aria-labelledby="results-heading"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        const [file] = event.dataTransfer?.files ?? [];
        const text = event.dataTransfer?.getData('text/plain') ?? '';
        if (file !== undefined) void take(file);
        else if (text !== '') onSource({ kind: 'text', text });
      }}
    >
      <h2 id="results-heading" tabIndex={-1} ref={heading}>
        {say('results.heading')}
      </h2>
      <Radios
        legend={say('results.way')}
        value={source.kind === 'form' ? 'form' : 'text'}
        choices={[
          { value: 'text', label: say('results.way.text') },
          { value: 'form', label: say('results.way.form') },
        ]}
        onValue={(way) =>
          onSource(way === 'form' ? { kind: 'form', rows: {} } : { kind: 'text', text: '' })
        }
      />
      {source.kind === 'text' ? (
        <TextField
          label={say('results.paste')}
          value={source.text}
          lines={7}
          onValue={(text) => onSource({ kind: 'text', text })}
        />
      ) : null}
      {source.kind === 'file' ? (
        <p>
          <strong>
            <bdi>{say('results.file', { name: source.name })}</bdi>
          </strong>{' '}
          <button
            type="button"
            onClick={() => {
              heading.current?.focus();
              onSource({ kind: 'text', text: '' });
            }}
          >
            {say('results.other')}
          </button>
        </p>
      ) : null}
      {source.kind === 'form' ? (
        formTests.map((analyte) => (
          <FormTest
            key={analyte}
            say={say}
            analyte={analyte}
            row={source.rows[analyte] ?? emptyRow}
            onRow={(row) => onSource({ kind: 'form', rows: { ...source.rows, [analyte]: row } })}
          />
        ))
      ) : (
        <label class="button file">
          {say('results.open')}
          <input type="file" onChange={(event) => void take(event.currentTarget.files?.[0])} />
        </label>
      )}
      {reading.reports.length > 1 ? (
        <SelectField
          label={say('results.which')}
          value={String(which)}
          onValue={(value) => onWhich(Number(value))}
          choices={reading.reports.map(({ label }, i) => ({
            value: String(i),
            label: label ?? say('results.report', { number: String(i + 1) }),
          }))}
        />
      ) : null}
    </section>
  );
}

function FormTest({
  say,
  analyte,
  row,
  onRow,
}: {
  readonly say: Say;
  readonly analyte: Analyte;
  readonly row: FormRow;
  readonly onRow: (row: FormRow) => void;
}) {
  const codes = unitsOf(analyte).map(({ code }) => code);
  return (
    <fieldset class="test">
      <legend>{sayMember(say, 'test', analyte)}</legend>
      <TextField
        label={say('results.value')}
        value={row.value}
        inputMode="decimal"
        onValue={(value) => onRow({ ...row, value })}
      />
      <SelectField
        label={say('results.unit')}
        value={row.unit}
        onValue={(unit) => onRow({ ...row, unit })}
        choices={[
          { value: '', label: say('results.choose-unit') },
          ...codes.map((code) => ({ value: code, label: code })),
        ]}
      />
      <TextField
        label={say('results.low')}
        value={row.low}
        inputMode="decimal"
        onValue={(low) => onRow({ ...row, low })}
      />
      <TextField
        label={say('results.high')}
        value={row.high}
        inputMode="decimal"
        onValue={(high) => onRow({ ...row, high })}
      />
    </fieldset>
  );
}

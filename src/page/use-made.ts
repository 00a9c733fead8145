// The desk arrives with every keystroke; what was read and made of it leaves, the newest alone.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Advice } from '../advise/advice.js';
import type { Kit } from '../app/kit.js';
import type { ReasoningContent } from '../letter/index.js';
import type { Problem } from '../problem.js';
import type { ClinicRead } from './clinic.js';
import type { Desk } from './desk.js';
import { makeFromDesk, reasoningPage, suggestionsFor } from './make-from-desk.js';
import { type Reading, readDesk } from './read-desk.js';

export type Made =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'fault' }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'held'; readonly callSheet: ReasoningContent; readonly reasoning: string }
  | {
      readonly kind: 'made';
      readonly html: string;
      readonly text: string;
      readonly note: string;
      readonly reasoning: string;
    };

export type Outlook = {
  readonly reading: Reading;
  readonly suggested: Advice | null;
  readonly made: Made;
};

const start: Outlook = {
  reading: {
    reports: [],
    written: null,
    understood: null,
    lines: [],
    problems: [],
    needs: ['results'],
  },
  suggested: null,
  made: { kind: 'waiting' },
};

/** Reads and makes anew after each change; an answer that comes late is thrown away. */
export function useMade(desk: Desk, clinic: ClinicRead, kit: Kit, today: string): Outlook {
  const [outlook, setOutlook] = useState(start);
  const turn = useRef(0);
  useEffect(() => {
    turn.current += 1;
    const mine = turn.current;
    const put = (made: Outlook) => {
      if (mine === turn.current) setOutlook(made);
    };
    look(desk, clinic, kit, today).then(put, () => put({ ...start, made: { kind: 'fault' } }));
  }, [desk, clinic]);
  return outlook;
}

async function look(desk: Desk, clinic: ClinicRead, kit: Kit, today: string): Promise<Outlook> {
  const reading = await readDesk(desk, today);
  const { understood } = reading;
  if (understood === null) return { reading, suggested: null, made: { kind: 'waiting' } };
  const suggested = suggestionsFor(understood, desk, today);
  if (!clinic.ok) return { reading, suggested, made: { kind: 'waiting' } };
  const outcome = await makeFromDesk(
    understood,
    clinic.clinic,
    desk,
    kit,
    ['html', 'text', 'note'],
    today,
  );
  if (outcome.kind === 'refused') return { reading, suggested, made: outcome };
  const reasoning = await reasoningPage(understood, desk, kit, today);
  if (outcome.kind === 'held') return { reading, suggested, made: { ...outcome, reasoning } };
  const file = (ending: string) => {
    const content = outcome.files.find((each) => each.ending === ending)?.content;
    return typeof content === 'string' ? content : '';
  };
  const made: Made = {
    kind: 'made',
    html: file('html'),
    text: file('txt'),
    note: file('note.txt'),
    reasoning,
  };
  return { reading, suggested, made };
}

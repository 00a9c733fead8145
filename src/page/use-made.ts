// The desk arrives with every keystroke; what was read and made of it leaves, the newest alone.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Advice } from '../advise/advice.js';
import type { Kit } from '../app/kit.js';
import type { Format } from '../app/formats.js';
import type { Outcome } from '../app/make-letter.js';
import { type CallWords, composeCallSheet, type ReasoningContent } from '../letter/index.js';
import type { Problem } from '../problem.js';
import type { ClinicRead } from './clinic.js';
import type { Desk } from './desk.js';
import { makeFromDesk, reasoningPage, suggestionsFor } from './make-from-desk.js';
import { nothing, type Reading, readDesk } from './read-desk.js';

export type Made =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'fault' }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | {
      readonly kind: 'held';
      readonly callSheet: ReasoningContent;
      /** The same sheet in other words. */
      readonly callSheetIn: (words: CallWords) => ReasoningContent;
      readonly reasoning: () => Promise<string>;
    }
  | {
      readonly kind: 'made';
      readonly html: string;
      /** The rest is made when somebody asks for it, so that a keystroke costs one letter only. */
      readonly words: (format: 'text' | 'note') => Promise<string>;
      readonly reasoning: () => Promise<string>;
    };

export type Outlook = {
  readonly reading: Reading;
  readonly suggested: Advice | null;
  readonly made: Made;
};

const start: Outlook = {
  reading: nothing,
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
  const as = (format: Format) => {
    // One voice reads one language.
    const asked = format === 'text' ? { ...desk, beside: null } : desk;
    return makeFromDesk(understood, clinic.clinic, asked, kit, [format], today);
  };
  const outcome = await as('html');
  if (outcome.kind === 'refused') return { reading, suggested, made: outcome };
  const reasoning = () => reasoningPage(understood, desk, kit, today);
  if (outcome.kind === 'held') {
    const { report, interpretation } = understood;
    const english = await kit.language('en');
    const callSheetIn = (own: CallWords) =>
      composeCallSheet(report, interpretation, clinic.clinic, english, own);
    return { reading, suggested, made: { ...outcome, callSheetIn, reasoning } };
  }
  const words = async (format: Format) => textIn(await as(format));
  return { reading, suggested, made: { kind: 'made', html: textIn(outcome), words, reasoning } };
}

/** The first file of an outcome, where it is text. */
function textIn(outcome: Outcome): string {
  const content = outcome.kind === 'made' ? outcome.files[0]?.content : null;
  return typeof content === 'string' ? content : '';
}

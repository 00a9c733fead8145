// What was made of the desk arrives; the letter or the call sheet is shown, and can be printed, saved, read and noted.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { sayProblem } from '../../problem.js';
import type { Made } from '../use-made.js';
import { listed, type PageKey, type PageTongue, type Say } from '../words.js';
import { HoldPart, Stop } from './hold-part.js';
import { LetterFrame } from './letter-frame.js';
import { ReadAloud } from './read-aloud.js';

export type Saved = 'pdf' | 'html' | 'fridge' | 'calendar';

type Props = {
  readonly tongue: PageTongue;
  /** The page's words in the language of the letter, where it has them: questions are asked in that language too. */
  readonly letterTongue: PageTongue | null;
  readonly made: Made;
  readonly needs: readonly string[];
  /** Somebody must be called, even before a call sheet can be written. */
  readonly urgent: boolean;
  readonly language: { readonly tag: string; readonly name: string };
  readonly release: { readonly by: string; readonly done: string } | null;
  readonly onRelease: (release: { readonly by: string; readonly done: string }) => void;
  /** The message that says how it went. */
  readonly onSave: (format: Saved) => Promise<PageKey>;
  readonly onPrinted: () => void;
};

export function LetterPart({
  tongue,
  letterTongue,
  made,
  needs,
  urgent,
  language,
  release,
  onRelease,
  onSave,
  onPrinted,
}: Props) {
  const { say } = tongue;
  const frame = useRef<HTMLIFrameElement | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const [told, setTold] = useState('');
  const save = async (format: Saved) => {
    if (format === 'pdf' || format === 'fridge') setTold(say('letter.making'));
    setTold(say(await onSave(format).catch(() => 'fault' as const)));
  };
  const print = () => {
    frame.current?.contentWindow?.print();
    onPrinted();
  };
  return (
    <section class="card letter-part" aria-labelledby="letter-heading">
      <h2 id="letter-heading" tabIndex={-1} ref={heading}>
        {say('letter.heading')}
      </h2>
      {made.kind === 'waiting' && urgent ? (
        <div class="hold" role="alert">
          <Stop say={say} />
        </div>
      ) : null}
      {made.kind === 'waiting' ? (
        <p role="status">
          {needs.length === 0
            ? say('letter.none')
            : say('letter.missing', { what: listed(tongue.tag, needs) })}
        </p>
      ) : null}
      {made.kind === 'refused' ? (
        <div role="alert" class="notice">
          <p>
            <strong>{say('letter.refused')}</strong>
          </p>
          <ul lang="en" dir="ltr">
            {made.problems.map((problem) => (
              <li key={sayProblem(problem)}>{sayProblem(problem)}</li>
            ))}
          </ul>
        </div>
      ) : null}
      {made.kind === 'fault' ? (
        <p role="alert" class="notice">
          {say('fault')}
        </p>
      ) : null}
      {made.kind === 'held' ? (
        <HoldPart
          tongue={tongue}
          sheet={made.callSheet}
          sheetIn={made.callSheetIn}
          onRelease={(named) => {
            onRelease(named);
            // The form that was in focus goes; the letter comes in its place.
            heading.current?.focus();
          }}
        />
      ) : null}
      {made.kind === 'made' ? (
        <>
          {release === null ? null : (
            <p class="notice">{say('hold.released', { name: release.by, done: release.done })}</p>
          )}
          <div class="row">
            <button type="button" class="main" onClick={print}>
              {say('letter.print')}
            </button>
            <button type="button" class="main" onClick={() => void save('pdf')}>
              {say('letter.pdf')}
            </button>
            <button type="button" onClick={() => void save('html')}>
              {say('letter.html')}
            </button>
            <ReadAloud say={say} language={language} text={made.words} />
          </div>
          <p role="status" class="told">
            {told}
          </p>
          <LetterFrame
            html={made.html}
            title={say('letter.heading')}
            onFrame={(shown) => {
              frame.current = shown;
            }}
          />
          <details>
            <summary>{say('letter.teach')}</summary>
            <Questions tongue={tongue} />
            {letterTongue === null || letterTongue.tag === tongue.tag ? null : (
              <Questions tongue={letterTongue} />
            )}
          </details>
          <div class="row">
            <button type="button" onClick={() => void save('fridge')}>
              {say('letter.fridge')}
            </button>
            <button type="button" onClick={() => void save('calendar')}>
              {say('letter.calendar')}
            </button>
          </div>
          <Note say={say} make={made.words} />
        </>
      ) : null}
      {made.kind === 'made' || made.kind === 'held' ? (
        <Reasoning say={say} make={made.reasoning} />
      ) : null}
    </section>
  );
}

function Questions({ tongue: { tag, dir, say } }: { readonly tongue: PageTongue }) {
  return (
    <ol lang={tag} dir={dir}>
      <li>{say('letter.teach.1')}</li>
      <li>{say('letter.teach.2')}</li>
      <li>{say('letter.teach.3')}</li>
    </ol>
  );
}

/** Made when it is unfolded, and again when what it was made from changes. */
function useWhenOpen(open: boolean, make: () => Promise<string>): string {
  const [text, setText] = useState('');
  useEffect(() => {
    let wanted = true;
    if (open)
      void make().then((made) => {
        if (wanted) setText(made);
      });
    return () => {
      wanted = false;
    };
  }, [open, make]);
  return text;
}

function Reasoning({ say, make }: { readonly say: Say; readonly make: () => Promise<string> }) {
  const [open, setOpen] = useState(false);
  const html = useWhenOpen(open, make);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say('letter.reasoning')}</summary>
      {open && html !== '' ? <LetterFrame html={html} title={say('letter.reasoning')} /> : null}
    </details>
  );
}

function Note({
  say,
  make,
}: {
  readonly say: Say;
  readonly make: (format: 'note') => Promise<string>;
}) {
  const [open, setOpen] = useState(false);
  const [told, setTold] = useState('');
  const write = useMemo(() => () => make('note'), [make]);
  const note = useWhenOpen(open, write);
  const shown = useRef<HTMLPreElement>(null);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(note);
      setTold(say('letter.copied'));
    } catch {
      // Some browsers refuse a page opened from a disk.
      if (shown.current !== null) getSelection()?.selectAllChildren(shown.current);
      setTold(say('letter.select-note'));
    }
  };
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say('letter.note')}</summary>
      <pre lang="en" dir="ltr" class="note" ref={shown}>
        {note}
      </pre>
      <button type="button" onClick={() => void copy()}>
        {say('letter.copy')}
      </button>
      <p role="status" class="told">
        {told}
      </p>
    </details>
  );
}

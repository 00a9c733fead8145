// A held report's call sheet arrives; who released the letter and what was done leaves, or nothing.
import { useState } from 'preact/hooks';
import type { CallWords, ReasoningContent } from '../../letter/index.js';
import { callWords } from '../call-words.js';
import type { PageTongue, Say } from '../words.js';
import { TextField } from './fields.js';

type Props = {
  readonly tongue: PageTongue;
  readonly sheet: ReasoningContent;
  readonly sheetIn: (words: CallWords) => ReasoningContent;
  readonly onRelease: (release: { readonly by: string; readonly done: string }) => void;
};

export function HoldPart({ tongue, sheet, sheetIn, onRelease }: Props) {
  const { say } = tongue;
  const [by, setBy] = useState('');
  const [done, setDone] = useState('');
  const ready = by.trim() !== '' && done.trim() !== '';
  return (
    <div class="hold">
      <div role="alert">
        <Stop say={say} />
      </div>
      {tongue.tag === 'en' ? (
        <Sheet sheet={sheet} dir="ltr" />
      ) : (
        <>
          <Sheet sheet={sheetIn(callWords(tongue))} dir={tongue.dir} />
          <details>
            <summary>{say('hold.english')}</summary>
            <Sheet sheet={sheet} dir="ltr" />
          </details>
        </>
      )}
      <TextField label={say('hold.done')} value={done} lines={2} onValue={setDone} />
      <TextField label={say('hold.name')} value={by} onValue={setBy} />
      <button
        type="button"
        class="main"
        aria-disabled={!ready}
        onClick={() => {
          if (ready) onRelease({ by: by.trim(), done: done.trim() });
        }}
      >
        {say('hold.release')}
      </button>
    </div>
  );
}

/** What is said first of results that must not wait. */
export function Stop({ say }: { readonly say: Say }) {
  return (
    <>
      <h3>
        <span class="sign" aria-hidden="true">
          !
        </span>{' '}
        {say('hold.heading')}
      </h3>
      <p>{say('hold.what')}</p>
    </>
  );
}

function Sheet({
  sheet,
  dir,
}: {
  readonly sheet: ReasoningContent;
  readonly dir: PageTongue['dir'];
}) {
  return (
    <div class="call" lang={sheet.lang} dir={dir}>
      <h4>{sheet.title}</h4>
      {sheet.intro === '' ? null : <p>{sheet.intro}</p>}
      {sheet.blocks.map((block) => (
        <section key={block.slug}>
          <h5>{block.heading}</h5>
          {block.paragraphs.map((text) => (
            <p key={text}>{text}</p>
          ))}
          <ul>
            {block.list.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

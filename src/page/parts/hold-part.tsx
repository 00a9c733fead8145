// A held report's call sheet arrives; who released the letter and what was done leaves, or nothing.
import { useState } from 'preact/hooks';
import type { ReasoningContent } from '../../letter/index.js';
import type { Say } from '../words.js';
import { TextField } from './fields.js';

type Props = {
  readonly say: Say;
  readonly sheet: ReasoningContent;
  readonly onRelease: (release: { readonly by: string; readonly done: string }) => void;
};

export function HoldPart({ say, sheet, onRelease }: Props) {
  const [by, setBy] = useState('');
  const [done, setDone] = useState('');
  const ready = by.trim() !== '' && done.trim() !== '';
  return (
    <div class="hold" role="alert">
      <h3>
        <span class="sign" aria-hidden="true">
          !
        </span>{' '}
        {say('hold.heading')}
      </h3>
      <p>{say('hold.what')}</p>
      <div class="call" lang="en" dir="ltr">
        <h4>{sheet.title}</h4>
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

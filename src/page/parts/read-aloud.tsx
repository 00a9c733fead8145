// The shown letter arrives; it is read aloud by the browser's own voice where there is one for its language.
import { useEffect, useState } from 'preact/hooks';
import type { Say } from '../words.js';

type Props = {
  readonly say: Say;
  /** The letter as plain text, in this language alone. Another function stands for another letter. */
  readonly text: (format: 'text') => Promise<string>;
  readonly language: { readonly tag: string; readonly name: string };
};

export function ReadAloud({ say, text, language }: Props) {
  const [voices, setVoices] = useState<readonly SpeechSynthesisVoice[]>(voicesHere);
  const [state, setState] = useState<'quiet' | 'reading' | 'failed'>('quiet');
  useEffect(() => {
    const changed = () => setVoices(voicesHere());
    globalThis.speechSynthesis?.addEventListener?.('voiceschanged', changed);
    return () => globalThis.speechSynthesis?.removeEventListener?.('voiceschanged', changed);
  }, []);
  // Nobody goes on hearing a letter that is no longer the one shown.
  useEffect(
    () => () => {
      globalThis.speechSynthesis?.cancel();
      setState('quiet');
    },
    [text],
  );
  const voice = voiceFor(voices, language.tag);
  if (voice === undefined)
    return <p class="quiet">{say('letter.no-voice', { language: language.name })}</p>;
  const start = async () => {
    const parts = partsOf(await text('text'));
    speechSynthesis.cancel();
    setState('reading');
    parts.forEach((part, i) => {
      const spoken = new SpeechSynthesisUtterance(part);
      spoken.voice = voice;
      spoken.lang = voice.lang;
      if (i === parts.length - 1) spoken.onend = () => setState('quiet');
      spoken.onerror = ({ error }) =>
        setState(error === 'canceled' || error === 'interrupted' ? 'quiet' : 'failed');
      speechSynthesis.speak(spoken);
    });
  };
  const stop = () => {
    speechSynthesis.cancel();
    setState('quiet');
  };
  return (
    <>
      <button type="button" onClick={() => (state === 'reading' ? stop() : void start())}>
        {say(state === 'reading' ? 'letter.stop' : 'letter.read')}
      </button>
      <span role="status" class="quiet">
        {state === 'failed' ? say('letter.no-speech') : null}
      </span>
    </>
  );
}

/** Paragraph by paragraph, since browsers break off long speeches; lines broken for the eye are joined. */
function partsOf(text: string): readonly string[] {
  return text
    .split(/\n\s*\n/)
    .map((part) => part.replace(/\s*\n\s*/g, ' ').trim())
    .filter((part) => /[\p{L}\p{N}]/u.test(part));
}

function voicesHere(): readonly SpeechSynthesisVoice[] {
  return globalThis.speechSynthesis?.getVoices() ?? [];
}

/** Only voices of this device: another would send the letter to a server. */
function voiceFor(
  voices: readonly SpeechSynthesisVoice[],
  tag: string,
): SpeechSynthesisVoice | undefined {
  const language = tag.split('-')[0];
  return voices.find((voice) => voice.localService && voice.lang.split(/[-_]/)[0] === language);
}

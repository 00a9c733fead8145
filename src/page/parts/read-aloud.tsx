// The shown letter arrives; it is read aloud by the browser's own voice where there is one for its language.
import { useEffect, useState } from 'preact/hooks';
import type { Say } from '../words.js';

type Props = {
  readonly say: Say;
  readonly text: () => Promise<string>;
  readonly language: { readonly tag: string; readonly name: string };
};

export function ReadAloud({ say, text, language }: Props) {
  const [voices, setVoices] = useState<readonly SpeechSynthesisVoice[]>(voicesHere);
  const [reading, setReading] = useState(false);
  useEffect(() => {
    const changed = () => setVoices(voicesHere());
    globalThis.speechSynthesis?.addEventListener?.('voiceschanged', changed);
    return () => {
      globalThis.speechSynthesis?.removeEventListener?.('voiceschanged', changed);
      globalThis.speechSynthesis?.cancel();
    };
  }, []);
  const voice = voiceFor(voices, language.tag);
  if (voice === undefined)
    return <p class="quiet">{say('letter.no-voice', { language: language.name })}</p>;
  const start = async () => {
    const spoken = new SpeechSynthesisUtterance(await text());
    spoken.voice = voice;
    spoken.lang = voice.lang;
    spoken.onend = () => setReading(false);
    speechSynthesis.cancel();
    speechSynthesis.speak(spoken);
    setReading(true);
  };
  const stop = () => {
    speechSynthesis.cancel();
    setReading(false);
  };
  return (
    <button type="button" onClick={() => (reading ? stop() : void start())}>
      {say(reading ? 'letter.stop' : 'letter.read')}
    </button>
  );
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

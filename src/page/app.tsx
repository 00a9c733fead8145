// The page as a whole: the desk in the middle, its parts around it, the letter beside it.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Kit } from '../app/kit.js';
import { clinicOf, formOf } from './clinic.js';
import { type ClinicForm, type Desk, emptyClinic, emptyDesk, isUsed, nobody } from './desk.js';
import type { PageFacts } from './embedded.js';
import { makeBeside, makeFromDesk } from './make-from-desk.js';
import { ClinicPart } from './parts/clinic-part.js';
import { SelectField } from './parts/fields.js';
import { LetterPart, type Saved } from './parts/letter-part.js';
import { LookPart } from './parts/look-part.js';
import { NextPart } from './parts/next-part.js';
import { PersonPart } from './parts/person-part.js';
import { ResultsPart } from './parts/results-part.js';
import { UnderstoodPart } from './parts/understood-part.js';
import { rememberClinic, rememberedClinic } from './remember-clinic.js';
import { saveFile } from './save-file.js';
import { useMade } from './use-made.js';
import type { PageKey, PageTongue } from './words.js';

type Props = {
  readonly kit: Kit;
  readonly facts: PageFacts;
  readonly tongues: readonly [PageTongue, ...PageTongue[]];
  readonly languages: readonly { readonly tag: string; readonly name: string }[];
  readonly first: PageTongue;
  readonly today: string;
};

export function App({ kit, facts, tongues, languages, first, today }: Props) {
  const [tongue, setTongue] = useState(first);
  const [desk, setDesk] = useState<Desk>({ ...emptyDesk, language: first.tag });
  const [kept, setKept] = useState(() => rememberedClinic());
  const [form, setForm] = useState<ClinicForm>(
    () => kept ?? (facts.clinic === null ? emptyClinic : formOf(facts.clinic)),
  );
  const [demo, setDemo] = useState(false);
  const [saved, setSaved] = useState(true);
  const [told, setTold] = useState('');
  const { say } = tongue;
  const clinic = useMemo(() => clinicOf(form, demo), [form, demo]);
  const { reading, suggested, made } = useMade(desk, clinic, kit, today);

  const put = (some: Partial<Desk>) => {
    setSaved(false);
    setTold('');
    setDesk((before) => ({ ...before, ...some }));
  };
  // Another report or another value needs its own look: answers, choices and a release belong to what was seen.
  const putResults = (some: Partial<Desk>) =>
    put({ ...some, confirmed: [], corrections: {}, steps: null, release: null });
  const putForm = (next: ClinicForm) => {
    setForm(next);
    setDemo(false);
    if (kept !== null) {
      rememberClinic(next);
      setKept(next);
    }
  };

  useEffect(() => {
    document.documentElement.lang = tongue.tag;
    document.documentElement.dir = tongue.dir;
  }, [tongue]);

  const unsaved = !saved && isUsed(desk);
  useEffect(() => {
    if (!unsaved) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [unsaved]);

  // What was typed of one person is never said of the next.
  const { identity } = reading;
  const seen = useRef<string | null>(null);
  useEffect(() => {
    if (identity === null || identity === seen.current) return;
    const isOther = seen.current !== null && desk.person !== nobody;
    seen.current = identity;
    if (!isOther) return;
    setDesk((before) => ({ ...before, person: nobody, checkedBy: '', tablets: emptyDesk.tablets }));
    setTold(say('app.other-person'));
  }, [identity]);

  const clear = () => {
    seen.current = null;
    setDesk({ ...emptyDesk, language: desk.language, beside: desk.beside, form: desk.form });
    setSaved(true);
    setTold(say('app.cleared'));
  };

  const save = async (format: Saved): Promise<PageKey> => {
    if (reading.understood === null || !clinic.ok) return 'letter.none';
    const { understood } = reading;
    if (format === 'fridge' || format === 'calendar') {
      const files = await makeBeside(format, understood, clinic.clinic, desk, kit, today);
      if (files === null) return 'letter.no-fridge';
      if (files.length === 0) return 'letter.refused';
      for (const { ending, content } of files)
        saveFile(`letter.${desk.language}.${ending}`, content, typeOf(ending));
      return 'letter.saved';
    }
    const outcome = await makeFromDesk(understood, clinic.clinic, desk, kit, [format], today);
    if (outcome.kind !== 'made') return 'letter.refused';
    const tags = [desk.language, desk.beside].filter((tag) => tag !== null).join('-beside-');
    for (const { ending, content } of outcome.files)
      saveFile(`letter.${tags}.${ending}`, content, typeOf(ending));
    setSaved(true);
    return 'letter.saved';
  };

  const needs = [
    ...reading.needs.map((need) => say(`need.${need}`)),
    ...(clinic.ok ? [] : [say('need.clinic')]),
  ];
  const language = languages.find(({ tag }) => tag === desk.language) ?? {
    tag: 'en',
    name: 'English',
  };
  return (
    <>
      <a class="jump" href="#letter-heading">
        {say('app.to-letter')}
      </a>
      <header class="top">
        <div>
          <h1>Ironleaf</h1>
          <p>{say('app.tagline')}</p>
        </div>
        <div class="row">
          {tongues.length > 1 ? (
            <SelectField
              label={say('app.language')}
              value={tongue.tag}
              choices={tongues.map(({ tag, name }) => ({ value: tag, label: name, lang: tag }))}
              onValue={(tag) => setTongue(tongues.find((each) => each.tag === tag) ?? tongue)}
            />
          ) : null}
          <button type="button" onClick={clear}>
            {say('app.clear')}
          </button>
        </div>
        <p role="status" class="told">
          {told}
        </p>
        {tongue.draft ? <p class="notice">{say('app.machine')}</p> : null}
      </header>
      <main>
        <div class="steps">
          <ResultsPart
            say={say}
            source={desk.source}
            reading={reading}
            which={desk.which}
            onSource={(source) => putResults({ source, which: 0 })}
            onWhich={(which) => putResults({ which })}
          />
          <UnderstoodPart
            tongue={tongue}
            reading={reading}
            confirmed={desk.confirmed}
            onConfirm={(analyte) => put({ confirmed: [...desk.confirmed, analyte], release: null })}
            onCorrect={(analyte, correction) =>
              put({
                corrections: { ...desk.corrections, [analyte]: correction },
                confirmed: desk.confirmed.filter((each) => each !== analyte),
                release: null,
              })
            }
          />
          <PersonPart
            tongue={tongue}
            person={desk.person}
            reading={reading}
            today={today}
            onPerson={(person) => put({ person, release: null })}
          />
          <NextPart say={say} desk={desk} suggested={suggested} onDesk={put} />
          <LookPart say={say} desk={desk} languages={languages} onDesk={put} />
          <ClinicPart
            say={say}
            form={form}
            demo={demo}
            missing={clinic.ok ? [] : clinic.fields}
            remembered={kept !== null}
            onForm={putForm}
            onExample={() => {
              setForm(formOf(facts.exampleClinic));
              setDemo(true);
            }}
            onRemember={(on) => {
              rememberClinic(on ? form : null);
              setKept(on ? form : null);
            }}
          />
        </div>
        <LetterPart
          tongue={tongue}
          letterTongue={tongues.find(({ tag }) => tag === desk.language) ?? null}
          made={made}
          needs={needs}
          urgent={reading.urgent}
          language={language}
          release={desk.release}
          onRelease={(release) => put({ release })}
          onSave={save}
          onPrinted={() => setSaved(true)}
        />
      </main>
      <footer>
        <p>
          {say('app.review')} Ironleaf {facts.version}
        </p>
      </footer>
    </>
  );
}

const types: Readonly<Record<string, string>> = {
  pdf: 'application/pdf',
  html: 'text/html',
  'fridge.pdf': 'application/pdf',
  ics: 'text/calendar',
  'release.json': 'application/json',
};
const typeOf = (ending: string) => types[ending] ?? 'application/octet-stream';

// A finished letter as HTML arrives; it is shown as it will print, in a frame of its own where no script runs.
import { useEffect, useRef, useState } from 'preact/hooks';
import { lendFaces, lentFamily } from '../lend-face.js';

type Props = {
  readonly html: string;
  readonly title: string;
  /** Called with the frame once it can be printed. */
  readonly onFrame?: (frame: HTMLIFrameElement | null) => void;
};

/** Without it a browser lays tables out as in the last century. */
const emptyDocument = '<!doctype html><title></title>';

/**
 * The frame inherits this page's policy, under which the letter's own style sheet may not be written in as text.
 * It is handed over as a style sheet object instead, and the letter's elements are moved in.
 */
export function LetterFrame({ html, title, onFrame }: Props) {
  const place = useRef<HTMLIFrameElement>(null);
  const [ready, setReady] = useState(false);
  useEffect(() => {
    const frame = place.current;
    if (frame === null || !ready) return;
    let wanted = true;
    const grow = () => stretch(frame);
    void lendTo(frame, html).then(() => {
      if (!wanted) return;
      show(frame, html);
      onFrame?.(frame);
      grow();
    });
    window.addEventListener('resize', grow);
    return () => {
      wanted = false;
      window.removeEventListener('resize', grow);
    };
  }, [html, ready]);
  return (
    <iframe
      ref={place}
      class="letter"
      title={title}
      srcdoc={emptyDocument}
      onLoad={() => setReady(true)}
      sandbox="allow-same-origin allow-modals"
    />
  );
}

type View = Window & typeof globalThis;

function show(frame: HTMLIFrameElement, html: string): void {
  const inside = frame.contentDocument;
  const view = frame.contentWindow as View | null;
  if (inside === null || view === null) return;
  // Parsed with its style sheet in place, the letter would offend against the policy.
  const style = /<style>([\s\S]*?)<\/style>/.exec(html);
  const bare = style === null ? html : html.replace(style[0], '');
  const letter = new DOMParser().parseFromString(bare, 'text/html');
  const { lang, dir } = letter.documentElement;
  inside.documentElement.lang = lang;
  inside.documentElement.dir = dir;
  inside.title = letter.title;
  const sheet = new view.CSSStyleSheet();
  sheet.replaceSync((style?.[1] ?? '').replaceAll('sans-serif', `sans-serif,"${lentFamily}"`));
  inside.adoptedStyleSheets = [sheet];
  inside.body.replaceChildren(...letter.body.childNodes);
}

/** The faces that a device lacks, for every language that stands in the letter. */
async function lendTo(frame: HTMLIFrameElement, html: string): Promise<void> {
  const view = frame.contentWindow as View | null;
  if (view === null) return;
  const languages = [...html.matchAll(/ lang="([A-Za-z-]+)"/g)].map(([, lang = 'en']) => lang);
  await lendFaces(view, [...new Set(languages)]);
}

/** As high as the letter, so that the page has one way to scroll. */
function stretch(frame: HTMLIFrameElement): void {
  const inside = frame.contentDocument;
  if (inside === null) return;
  frame.style.height = `${Math.ceil(inside.documentElement.getBoundingClientRect().height) + 8}px`;
}

// A finished letter as HTML arrives; it is shown as it will print, in a frame of its own where no script runs.
import { useEffect, useRef } from 'preact/hooks';

type Props = {
  readonly html: string;
  readonly title: string;
  /** Called with the frame once it can be printed. */
  readonly onFrame?: (frame: HTMLIFrameElement | null) => void;
};

/**
 * The frame inherits this page's policy, under which the letter's own style sheet may not be written in as text.
 * It is handed over as a style sheet object instead, and the letter's elements are moved in.
 */
export function LetterFrame({ html, title, onFrame }: Props) {
  const place = useRef<HTMLIFrameElement>(null);
  useEffect(() => {
    const frame = place.current;
    if (frame === null) return;
    show(frame, html);
    onFrame?.(frame);
    const grow = () => stretch(frame);
    grow();
    window.addEventListener('resize', grow);
    return () => window.removeEventListener('resize', grow);
  }, [html]);
  return (
    <iframe ref={place} class="letter" title={title} sandbox="allow-same-origin allow-modals" />
  );
}

function show(frame: HTMLIFrameElement, html: string): void {
  const inside = frame.contentDocument;
  const view = frame.contentWindow as (Window & typeof globalThis) | null;
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
  sheet.replaceSync(style?.[1] ?? '');
  inside.adoptedStyleSheets = [sheet];
  inside.body.replaceChildren(...letter.body.childNodes);
}

/** As high as the letter, so that the page has one way to scroll. */
function stretch(frame: HTMLIFrameElement): void {
  const inside = frame.contentDocument;
  if (inside === null) return;
  frame.style.height = '10rem';
  frame.style.height = `${inside.documentElement.scrollHeight + 8}px`;
}

// The browser opens the page; the program starts, with nothing asked of any network.
import '../walk-schemas.js';
import './page.css';
import { render } from 'preact';
import { App } from './app.js';
import { embeddedFacts, embeddedJson } from './embedded.js';
import { lendFaces } from './lend-face.js';
import { openPageKit } from './open-page-kit.js';
import { pageTongue } from './words.js';

const facts = embeddedFacts();
const tongues = facts.languages.flatMap((tag) => pageTongue(tag) ?? []);
const [english, ...others] = tongues;
const place = document.getElementById('page');
if (english === undefined || place === null) throw new Error('the page is not whole');

const wished = navigator.languages.map((tag) => tag.split('-')[0]);
const first = tongues.find(({ tag }) => tag === wished[0]) ?? english;
const languages = facts.languages.map((tag) => ({
  tag,
  name: (embeddedJson(`locale:${tag}`) as { meta: { name: string } }).meta.name,
}));

// Names of languages, and whole pages, in scripts that this device lacks.
await lendFaces(window, facts.languages);

render(
  <App
    kit={openPageKit()}
    facts={facts}
    tongues={[english, ...others]}
    languages={languages}
    first={first}
    today={todayHere()}
  />,
  place,
);

/** Today by this device's clock. */
function todayHere(): string {
  const now = new Date();
  const part = (number: number) => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${part(now.getMonth() + 1)}-${part(now.getDate())}`;
}

// node scripts/invent-evening.js COUNT FOLDER [SEED]: so many invented patients arrive from the examples, mixed in
// ten languages, some to phone, some to fix; evening.json and post.csv (their invented addresses) leave.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Invented names of the demo, each in a script of its language. */
const names = {
  en: ['Tamsin Orrery', 'Idris Penhallow', 'Orla Finch', 'Wilf Anstey-Marsh'],
  ar: ['ليلى حداد', 'سامي البحري', 'نور المرسى'],
  bn: ['মিতা সাগর', 'রফিক জোয়ার'],
  es: ['Inés Marjal Ríos', 'Íñigo Peñasal'],
  fa: ['مینا دریاکنار', 'کاوه ساحلی'],
  hi: ['मीरा सागर', 'रवि तटवाल'],
  pl: ['Łucja Brzegowa', 'Józef Żuławski-Morze'],
  uk: ['Олеся Лиманська', 'Тарас Затока'],
  vi: ['Nguyễn Thị Bờ Biển', 'Trần Văn Sóng'],
  'zh-Hans': ['海小燕', '潮安'],
};
const languages = Object.keys(names);

const examples = new URL('../examples/', import.meta.url);
const bases = readdirSync(examples)
  .filter((name) => name.endsWith('.json') && name !== 'clinic.json')
  .sort()
  .map((name) => JSON.parse(readFileSync(new URL(name, examples), 'utf8')));

/** Marsaglia's xorshift of 32 bits: the same seed gives the same evening. @returns 0 or more, below 1. */
function chance(seed) {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** Up to three in a hundred away, with as many digits as before. */
function near(value, next) {
  const digits = value.split('.')[1]?.length ?? 0;
  return /^\d+(\.\d+)?$/.test(value)
    ? (Number(value) * (0.97 + 0.06 * next())).toFixed(digits)
    : value;
}

const results = (all, next) => all.map((each) => ({ ...each, value: near(each.value, next) }));

/** Every twenty-fifth report has a letter O for a nought; every fortieth wishes for a language there is none of. */
function spoilt(report, at) {
  const [first, ...others] = report.results;
  if (at % 25 === 11) return { ...report, results: [{ ...first, value: '13O' }, ...others] };
  return at % 40 === 17 ? { ...report, wishes: { language: 'tlh' } } : report;
}

/** One by one, for an evening may be longer than memory. Every fiftieth patient comes a second time. */
export function* inventEvening(count, seed = 20261125) {
  const next = chance(seed);
  const latest = [];
  for (let at = 0; at < count; at += 1) {
    const base = bases[Math.floor(next() * bases.length)];
    const language = languages[at % languages.length];
    const own = names[language];
    const birthDate = base.patient.birthDate?.replace(
      /\d\d$/,
      String(1 + (at % 28)).padStart(2, '0'),
    );
    const patient = {
      ...base.patient,
      id: `SB-${6001 + at}`,
      name: own[Math.floor(next() * own.length)],
      ...(birthDate === undefined ? {} : { birthDate }),
    };
    const before = (base.previous ?? []).map((each) => ({
      ...each,
      results: results(each.results, next),
    }));
    const report = {
      ...base,
      patient,
      results: results(base.results, next),
      ...(before.length > 0 ? { previous: before } : {}),
      wishes: { language },
    };
    const again = at % 50 === 49 ? latest[0] : undefined;
    const one = again ?? spoilt(report, at);
    yield one;
    latest.push(one);
    if (latest.length > 7) latest.shift();
  }
}

export function inventPost(reports) {
  const lines = new Map(
    reports.map(({ patient }, at) => [
      patient.id,
      `${patient.id},${patient.name},${1 + at} Lantern Row,Saltmarsh Bay`,
    ]),
  );
  return `id,name,street,place\n${[...lines.values()].join('\n')}\n`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const [count = '500', folder = 'out/evening', seed] = process.argv.slice(2);
  const reports = [...inventEvening(Number(count), seed === undefined ? undefined : Number(seed))];
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'evening.json'), JSON.stringify(reports, null, 1));
  writeFileSync(join(folder, 'post.csv'), inventPost(reports));
}

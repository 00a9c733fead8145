// A held report arrives; what the operator must do by phone leaves: who, why, what to say, what to write down.
import type { Interpretation } from '../interpret/interpretation.js';
import type { Report } from '../report/report.js';
import { type Clinic, clinicIn } from './clinic.js';
import { type Explain, explainer } from './explain.js';
import type { Language } from './language.js';
import { needsCarer } from './letter-ages.js';
import type { ReasoningBlock, ReasoningContent } from './reasoning.js';

/** What the sheet is said with where its reader has no English: every `call.`, `tier.` and `analyte.` of the catalogue. */
export type CallWords = Pick<Explain, 'words' | 'reason'> & {
  readonly lang: string;
  /** A value with its unit, which keep their order whatever the direction of the sheet. */
  readonly amount: (text: string) => string;
};

/**
 * The sheet that stands in for a held letter. It has the shape of the reasoning sheet.
 * @param language English with its reasoning file.
 * @param own Words of another language; nothing else of the sheet changes.
 */
export function composeCallSheet(
  report: Report,
  interpretation: Interpretation,
  clinic: Clinic,
  language: Language,
  own?: CallWords,
): ReasoningContent {
  const { words, reason } = own ?? explainer(language);
  const lang = own?.lang ?? language.tag;
  const amount = own?.amount ?? ((text: string) => text);
  const { tier, reasons } = interpretation.hold;
  const { patient } = report;
  const block = (slug: string, list: readonly string[]): ReasoningBlock => ({
    slug,
    look: 'call',
    heading: words(`call.${slug}`),
    paragraphs: [],
    list,
    table: null,
  });
  const results = interpretation.results.map(
    ({ analyte, copied }) =>
      `${words(`analyte.${analyte}`)}: ${amount(`${copied.value} ${copied.unit}`.trim())}`,
  );
  return {
    lang,
    title: words('call.title'),
    intro: words('call.clinician'),
    about: '',
    blocks: [
      block('who', [
        patient.name === null
          ? words('call.patient-unnamed', { place: placeOf(report) })
          : words('call.patient', { name: patient.name }),
        ...(needsCarer(patient) ? [words('call.carer')] : []),
      ]),
      block('why', [words(`tier.${tier}`), ...new Set(reasons.map(reason)), ...results]),
      block('say', [
        words(`call.say.${tier}`, { emergency: clinicIn(clinic, lang).emergencyNumber }),
      ]),
      block('ask', [words('call.ask.signs'), words('call.ask.alone'), words('call.ask.clear')]),
      block('record', [words('call.record.line'), words('call.not-reached')]),
    ],
  };
}

function placeOf({ place, patient }: Report): string {
  return patient.id ?? [place.file, place.row].filter((part) => part !== null).join(', row ');
}

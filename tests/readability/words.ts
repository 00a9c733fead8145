// Nothing arrives; the words a letter may not use, the terms it must explain and the one word it keeps for each thing leave.

/**
 * Words that alarm, blame or mislead: Cox and Fritz 2022 BMJ 377:e066720; NHS digital service manual, A to Z;
 * Zikmund-Fisher and others 2007 on labels of results. The last alternatives are about chances: IPDAS asks for
 * the same denominator throughout and against '1 in X' (Trevena and others 2013, BMC Med Inform Decis Mak 13 S2:S7).
 */
export const bannedWords =
  /\b(normal|normally|abnormal|critical|dangerous|good(?! to know)|bad|fail(ed|ure)?|poor|denies|refuse[sd]?|complian(t|ce)|non-compliant|should|chronic|deteriorat\w+|sanitary|hygiene|feminine|1 in \d+|times more likely|per ?cent)\b/i;

/**
 * Medical terms a letter may use once it has said them in everyday words. Own list; a gloss at first use is item 4
 * of PEMAT-P (AHRQ publication 14-0002-EF).
 */
export const terms = [
  'transferrin saturation',
  'reticulocyte haemoglobin',
  'haemoglobin',
  'haematocrit',
  'transferrin',
  'serum iron',
  'ferritin',
  'TIBC',
  'UIBC',
  'MCV',
  'MCH',
  'CRP',
  'sTfR',
  'dietitian',
  'thalassaemia',
] as const;

/** Everyday words that explain a term in the sentence of its first use, where no bracket does. */
export const glosses: Readonly<Record<string, RegExp>> = {
  ferritin: /one of the iron tests|iron store/,
  thalassaemia: /blood condition/,
};

/** What only clinicians say. Own list. */
export const jargon =
  /\b(anaemi[ac]\w*|inflammation|deficien\w+|microcyt\w+|macrocyt\w+|erythro\w+|hepcidin|serum(?! iron\))|aetiolog\w+|prognosis|haematolog\w+|gastro\w+|menorrhagia|dietary|supplement\w*|absor\w+|bioavailab\w+|intake|elevated|reference interval|analyte|specimen|sample)\b/i;

/** One word for one thing (Department of Health, Easy Read basics 2009): the second word of each pair is not used. Own pairs. */
export const secondWords =
  /\b(normal range|reference range|iron level|iron levels|stool|faeces|physician|haemorrhage|iron pills?|menstruation|reserve)\b/i;

// The closed lists of the trade. Nothing arrives here; every other room imports its words from here.

/** Laboratory tests this program reads. Order is the order of the letter. */
export const analytes = [
  'haemoglobin',
  'ferritin',
  'transferrin-saturation',
  'serum-iron',
  'transferrin',
  'tibc',
  'uibc',
  'mcv',
  'mch',
  'rbc',
  'haematocrit',
  'crp',
  'stfr',
  'reticulocyte-haemoglobin',
] as const;
export type Analyte = (typeof analytes)[number];

/** Where a result lies, as told to patients. Ordered from low to high. */
export const positions = [
  'well-below',
  'a-little-below',
  'in-range',
  'a-little-above',
  'well-above',
] as const;
export type Position = (typeof positions)[number];

/** How a result enters the decision table. */
export const levels = ['low', 'usual', 'high', 'not-measured'] as const;
export type Level = (typeof levels)[number];

/** What the whole set of results looks like. The slugs are a contract with other programs. */
export const patterns = [
  'all-in-range',
  'early-low-intake',
  'iron-deficiency-without-anaemia',
  'iron-deficient-erythropoiesis',
  'iron-deficiency-anaemia',
  'anaemia-of-inflammation',
  'mixed-inflammation-and-iron-deficiency',
  'possible-recent-blood-loss',
  'microcytosis-with-normal-iron',
  'raised-ferritin-normal-tsat',
  'raised-tsat-and-ferritin',
  'anaemia-not-explained-by-iron',
  'high-haemoglobin',
  'post-iron-dose-artefact',
  'discordant-or-implausible',
  'unclear',
] as const;
export type Pattern = (typeof patterns)[number];

/** What blurs a reading: a fact of the body, of the sample or of what was not measured. */
export const flags = [
  'crp-raised',
  'crp-not-measured',
  'pregnancy',
  'after-birth',
  'child',
  'over-65',
  'sex-unknown',
  'age-unknown',
  'recent-iron-tablet',
  'recent-iron-injection',
  'recent-transfusion',
  'recent-bleed',
  'blood-donation',
  'heavy-periods',
  'kidney-disease',
  'heart-failure',
  'bowel-disease',
  'liver-disease',
  'alcohol',
  'thalassaemia',
  'iron-overload-known',
  'taking-iron',
  'old-sample',
  'not-fasting',
  'fasting-unknown',
  'lab-flag-disagrees',
  'lab-and-guideline-disagree',
  'guidelines-disagree',
  'tsat-printed-differs',
  'tsat-not-computed',
  'at-the-limit',
  'unit-doubtful',
  'value-doubtful',
  'indices-disagree',
  'comparator-undecided',
  'preliminary-result',
  'haemoglobin-not-measured',
  'ferritin-not-measured',
  'iron-supply-not-measured',
  'altitude-adjusted',
  'smoking-adjusted',
  'microcytosis-out-of-proportion',
  'anaemia-with-high-tsat',
  'ferritin-above-referral-limit',
  'bowel-check-pathway',
] as const;
export type Flag = (typeof flags)[number];

/** Why a letter must not simply go out, from least to most pressing. */
export const holdTiers = ['routine', 'referral', 'same-day', 'emergency'] as const;
export type HoldTier = (typeof holdTiers)[number];

/** What happens next; who does it is part of the step. */
export const nextSteps = [
  'no-further-test',
  'repeat-test',
  'repeat-test-fasting',
  'repeat-test-when-well',
  'further-tests',
  'referral',
  'talk-at-clinic',
  'take-tablets-as-prescribed',
  'tell-us-about-periods',
  'eat-for-iron',
  'clinic-calls-you',
] as const;
export type NextStep = (typeof nextSteps)[number];

export const sexes = ['female', 'male', 'unknown'] as const;
export type Sex = (typeof sexes)[number];

export const trimesters = [1, 2, 3] as const;
export type Trimester = (typeof trimesters)[number];

/** Symptoms that matter for urgency or for what the letter says. */
export const symptoms = [
  'tiredness',
  'breathless-on-effort',
  'breathless-at-rest',
  'chest-pain',
  'fainting',
  'heart-racing-at-rest',
  'confusion',
  'dizziness',
  'sudden-loss-of-sight',
  'one-sided-weakness',
  'swollen-painful-leg',
  'fever',
  'jaundice',
  'limp-or-very-sleepy-child',
  'refusing-feeds',
  'weight-loss',
  'abdominal-pain',
  'change-in-bowel-habit',
  'headache',
  'craving-ice-or-earth',
  'restless-legs',
] as const;
export type Symptom = (typeof symptoms)[number];

export const bleedings = [
  'none',
  'heavy-periods',
  'black-or-bloody-stool',
  'vomited-blood',
  'very-heavy-now',
  'recent-injury-or-surgery',
  'recent-birth',
  'blood-donation',
  'nosebleeds',
  'other',
] as const;
export type Bleeding = (typeof bleedings)[number];

export const conditions = [
  'kidney-disease',
  'kidney-disease-dialysis',
  'heart-failure',
  'inflammatory-bowel-disease',
  'coeliac-disease',
  'liver-disease',
  'alcohol-related',
  'haemochromatosis',
  'iron-overload',
  'thalassaemia-major',
  'thalassaemia-trait',
  'sickle-cell-disease',
  'diabetes',
  'gout',
  'kidney-stones',
  'g6pd-deficiency',
  'thyroid-disease',
  'high-blood-pressure',
  'high-potassium',
  'chronic-inflammation',
  'bariatric-surgery',
  'cancer',
] as const;
export type Condition = (typeof conditions)[number];

export const medicines = [
  'iron-tablets',
  'iron-injection',
  'warfarin',
  'levothyroxine',
  'tetracycline',
  'quinolone',
  'levodopa',
  'bisphosphonate',
  'antacid',
  'calcium',
  'proton-pump-inhibitor',
  'nsaid',
  'anticoagulant',
  'methyldopa',
  'mycophenolate',
  'penicillamine',
  'zinc',
  'colestyramine',
  'contraceptive-pill',
  'iron-chelator',
] as const;
export type Medicine = (typeof medicines)[number];

export const diets = [
  'no-restriction',
  'no-pork',
  'no-beef',
  'fish-only',
  'vegetarian',
  'vegetarian-no-egg',
  'vegan',
] as const;
export type Diet = (typeof diets)[number];

export const dietAvoids = [
  'blood',
  'gluten',
  'nuts',
  'sesame',
  'shellfish',
  'soy',
  'egg',
  'dairy',
  'fish',
] as const;
export type DietAvoid = (typeof dietAvoids)[number];

/** Pictures in words; one a letter at most. */
export const analogies = ['shirt-shop', 'builders-yard', 'bakery', 'family-money'] as const;
export type Analogy = (typeof analogies)[number];

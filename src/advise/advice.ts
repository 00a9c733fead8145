// What to eat, what happens next, when to get help: choices as codes, the words come later.
import type { Reason, SourceUsed } from '../interpret/interpretation.js';
import type { Medicine, NextStep } from '../terms.js';

/** `raise-iron` suggests foods; `general` healthy eating; `hold-back` the opposite for overload; `none` says nothing. */
export type FoodMode = 'raise-iron' | 'general' | 'hold-back' | 'none';

export type FoodChoice = {
  readonly food: string;
  readonly kind: string;
  readonly haem: boolean;
  readonly vitaminC: boolean;
  readonly lowCost: boolean;
  /** Rounded milligrams in one portion where sources agree, otherwise a word. */
  readonly amount: { readonly milligrams: number } | { readonly size: 'some' | 'a-lot' };
  readonly portionGrams: number;
  readonly cautions: readonly string[];
  readonly why: readonly Reason[];
};

export type Swap = {
  readonly swap: string;
  /** Honest size in words, as a code. */
  readonly size: string;
  readonly rules: readonly string[];
};

export type FoodAdvice = {
  readonly mode: FoodMode;
  readonly why: readonly Reason[];
  readonly choices: readonly FoodChoice[];
  /** Vitamin C foods to go with plant meals. */
  readonly partners: readonly FoodChoice[];
  /** At most three, the largest measured change first. */
  readonly swaps: readonly Swap[];
  /** Questions people ask about the swaps, answered in the same form. */
  readonly answers: readonly Swap[];
  readonly cautions: readonly string[];
  /** Left out and why: for the reasoning sheet. */
  readonly leftOut: readonly { readonly food: string; readonly why: string }[];
  readonly askDietitian: boolean;
};

export type TabletAdvice = {
  /** As the clinician entered it; null when only "prescribed" is known. */
  readonly dose: string | null;
  readonly gaps: readonly {
    readonly medicine: Medicine;
    readonly hours: number | null;
    readonly rule: string;
  }[];
  readonly points: readonly string[];
};

export type PlannedStep = {
  readonly step: NextStep;
  readonly who: 'patient' | 'clinic';
  /** ISO date. */
  readonly by: string | null;
  /** True when the program suggested it, false when the clinician chose it. */
  readonly suggested: boolean;
  readonly rules: readonly string[];
  /** The clinician's own words, in their language, printed boxed and never translated. */
  readonly words: string | null;
};

export type Urgency = 'emergency' | 'today' | 'soon';

export type Advice = {
  readonly food: FoodAdvice;
  readonly tablets: TabletAdvice | null;
  readonly steps: readonly PlannedStep[];
  /** ISO date after which silence means: call us. */
  readonly heardBy: string;
  readonly help: readonly { readonly sign: string; readonly urgency: Urgency }[];
  readonly cautions: readonly string[];
  /** Values for the clinician's sheet only. */
  readonly staff: readonly Reason[];
  readonly sources: readonly SourceUsed[];
};

/** The clinician's choices; every one may be absent. */
export type Choices = {
  readonly steps:
    | readonly {
        readonly step: NextStep;
        readonly by: string | null;
        readonly words: string | null;
      }[]
    | null;
  readonly tabletsPrescribed: { readonly dose: string | null } | null;
  readonly noFood: boolean;
};

/** One meal of the week's sheet, as codes. */
export type MealIdea = {
  /** 1 to 7. */
  readonly day: number;
  readonly meal: string;
  readonly food: string;
  /** What goes with it: a vitamin C food, or null where the food needs none. */
  readonly partner: string | null;
  readonly drink: string;
  readonly cautions: readonly string[];
};

// The fields of a jar and of what was seen of it, each described once: its label in a form and at the head of a row, its
// kind (how typed text is read and how it is written), what the history calls it, and its row in the pane. Pure, and free
// of record schemas, so that the page's first load stays small.

/** From loosest to firmest. *Weak* means runny or soft. */
export const SET_WORDS = ['runny', 'soft', 'spoonable', 'firm', 'very firm'] as const;
/** How sour it tastes, in order. */
export const TANGS = ['none', 'mild', 'clear', 'sharp'] as const;
export const WHEYS = ['none', 'a little', 'some', 'a lot'] as const;
export const EARLY_SETS = ['loose', 'starting', 'set'] as const;
export const PH_HOWS = ['meter', 'strip'] as const;
export const VOLUMES_KNOWN = ['measured', 'filled to the vessel', 'milk plus seed'] as const;

/**
 * What text of a field means: one line, several; an amount (a bare number of a volume is mL); a count of CFU; hours or days
 * (from zero: zero is a real answer); a pH; yes or no; or one of a few words.
 */
export type FieldKind =
  | 'line'
  | 'prose'
  | 'amount'
  | 'volume'
  | 'count'
  | 'hours'
  | 'hours from zero'
  | 'days from zero'
  | 'pH'
  | 'yes or no'
  | readonly string[];

export interface JarField {
  readonly label: string;
  readonly kind: FieldKind;
  /** What stands in an empty field of a form. */
  readonly example?: string;
  /** Where a change is told; the label without its capital where it is left out. */
  readonly history?: string;
  /** Its row in the pane; none where it is left out. */
  readonly pane?: string;
}

/** Of the jar itself. */
export const JAR_FIELDS = {
  milk: { label: 'Milk', kind: 'line', example: 'whole milk' },
  milkAmount: { label: 'How much milk', kind: 'amount', example: '1 qt' },
  vessel: { label: 'Vessel', kind: 'line', example: 'quart jar', pane: 'Vessel' },
  finalVolume: { label: 'Final volume', kind: 'volume', example: '946 ml' },
  finalVolumeKnown: {
    label: 'How the final volume is known',
    kind: VOLUMES_KNOWN,
    history: 'how the volume is known',
  },
  countPerMl: {
    label: 'Counted: CFU in each mL, if someone had it counted',
    kind: 'count',
    history: 'counted CFU in each mL',
  },
} as const satisfies Record<string, JarField>;

/** Of what was seen of it, in the order of the pane. Signs, bubbles and what is plainly said stand apart: they are no text. */
export const OUTCOME_FIELDS = {
  earlyCheckHours: { label: 'Hours after the start', kind: 'hours', history: 'hours to the early check' },
  earlySet: { label: 'Set by then?', kind: EARLY_SETS, history: 'set at the early check' },
  earlyPh: { label: 'pH then', kind: 'pH', history: 'pH at the early check' },
  earlySour: { label: 'Did it smell sour?', kind: 'yes or no', history: 'sour at the early check' },
  setAfterHours: {
    label: 'Not yet set at (hours)',
    kind: 'hours from zero',
    history: 'hours at which it was not yet set',
  },
  setByHours: { label: 'Set by (hours)', kind: 'hours', history: 'hours by which it was set' },
  setWord: { label: 'Set', kind: SET_WORDS, history: 'set word', pane: 'Set' },
  setAtTakeOut: {
    label: 'Was it set at the end of the hold?',
    kind: 'yes or no',
    history: 'set at take-out',
    pane: 'Set at take-out',
  },
  sour: {
    label: 'Does it smell sour and clean?',
    kind: 'yes or no',
    history: 'smelled sour and clean at take-out',
  },
  ph: { label: 'pH', kind: 'pH', history: 'pH', pane: 'pH' },
  phHow: { label: 'pH measured with', kind: PH_HOWS, history: 'pH measured with' },
  phChecked: {
    label: 'Meter checked in a pH 4.01 buffer that day?',
    kind: 'yes or no',
    history: 'meter checked in buffer that day',
  },
  texture: { label: 'Texture', kind: 'line', pane: 'Texture' },
  whey: { label: 'Whey', kind: WHEYS, pane: 'Whey' },
  tang: { label: 'Tang', kind: TANGS, pane: 'Tang' },
  smell: { label: 'Smell', kind: 'line', pane: 'Smell' },
  colour: { label: 'Colour', kind: 'line', pane: 'Colour' },
  powerCut: {
    label: 'Did the power fail during the hold?',
    kind: 'yes or no',
    history: 'power cut during the hold',
  },
  powerCutHours: { label: 'For how many hours', kind: 'hours', history: 'hours of the power cut' },
  seenAt: { label: 'When it was seen', kind: ['take-out', 'after opening'], history: 'seen' },
  openedDays: { label: 'Days after opening', kind: 'days from zero', history: 'days after opening' },
  note: { label: 'Remark', kind: 'prose', history: 'note' },
} as const satisfies Record<string, JarField>;

export type OutcomeFieldName = keyof typeof OUTCOME_FIELDS;

/** What stands in a field of a kind, as text. */
export type TextOf<K extends FieldKind> = K extends 'yes or no'
  ? '' | 'yes' | 'no'
  : K extends readonly (infer Word extends string)[]
    ? '' | Word
    : string;

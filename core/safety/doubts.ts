// What was seen of a jar in its own hold that speaks against it as a seed. A doubt is no stop, for nobody saw it spoil, but it
// comes after every seed without one, and no score lifts it. A slow start is to be looked at, and goes with its descendants.
import { LEAST_SETTING_HOURS } from '../ledger/hold-hours';
import type { Outcome } from '../ledger/records';
import { meterShows } from './gate';
import { powerCutNoted } from './remarks';
import { takeOutGate } from './take-out';
import type { GateReason } from '../shapes/safety-codes';
import type { Doubt, InShort, MatesPowerCut, SeedLook } from '../shapes/seed-codes';

type Seen = Omit<Outcome, 'jar'>;

/** Notes that stand beside an outcome: what is written of a jar is read wherever it was written. */
export interface NotesBeside {
  readonly jar: string | null;
  readonly hold: string | null;
  readonly batch: string | null;
}
const NO_NOTES: NotesBeside = { jar: null, hold: null, batch: null };

/** Set words that can be said only of a jar that has set; runny and soft may be said of one that has not. */
const SETS: readonly Outcome['setWord'][] = ['spoonable', 'firm', 'very firm'];

/** Whether somebody wrote down that it set: at take-out, or by a word that says so. */
const knownToSet = ({ setAtTakeOut, setWord }: Seen): boolean => setAtTakeOut ?? SETS.includes(setWord);

/** A jar said to have come out after fewer hours of warmth than anything sets in: it says nothing, and is in doubt as a seed. */
export const heldShort = (hours: number | null): readonly Doubt[] =>
  hours === null || hours >= LEAST_SETTING_HOURS ? [] : [{ code: 'held short', hours }];

const acidShown = ({ ph, phHow, phChecked }: Pick<Seen, 'ph' | 'phHow' | 'phChecked'>): boolean =>
  ph !== null && meterShows({ ph, how: phHow ?? 'not said', checked: phChecked ?? null });

type SlowStart = Extract<GateReason, { code: 'slow start' }>;

interface Weighed {
  readonly against: readonly GateReason[];
  readonly slow: readonly SlowStart[];
  /** Fine bubbles are all there is, in a jar that set or has its acid: normal for this kind of culture, so no doubt. */
  readonly bubblesAlone: boolean;
}

function weigh(outcome: Seen, mates: MatesPowerCut | null): Weighed {
  const { verdict, reasons } = takeOutGate(outcome, true);
  if (verdict === 'discard') return { against: [], slow: [], bubblesAlone: false };
  const slow = reasons.filter((reason): reason is SlowStart => reason.code === 'slow start');
  // An unchecked meter speaks for no jar and against none.
  const against = reasons.filter(({ code }) => !['slow start', 'thickened', 'unchecked'].includes(code));
  const cut = mates !== null && outcome.powerCut === null;
  const good = knownToSet(outcome) || (outcome.setAtTakeOut === null && acidShown(outcome));
  const bubblesAlone = !cut && good && against.length > 0 && against.every(({ code }) => code === 'bubbles');
  return { against, slow, bubblesAlone };
}

/** A power cut that only a note tells of, and which: neither the jar nor its hold nor hold-mates say anything of one. */
function notedCut(
  outcome: Seen | null,
  mates: MatesPowerCut | null,
  notes: NotesBeside,
): { readonly hours: number | null; readonly where: keyof NotesBeside } | null {
  if (mates !== null || (outcome !== null && outcome.powerCut !== null)) return null;
  const places = [
    ['hold', notes.hold],
    ['jar', outcome?.note ?? null],
    ['jar', notes.jar],
    ['batch', notes.batch],
  ] as const;
  for (const [where, note] of places) {
    const cut = powerCutNoted(note);
    if (cut !== null) return { ...cut, where };
  }
  return null;
}

/**
 * Each doubt: what the gate asks about (a power cut, a pH above 4.6, fine bubbles that are not
 * alone), whether or not its questions were all answered, and a power cut that only jars of the same hold, or its note, tell
 * of. Empty where there is none, and where the gate condemns the jar, which is said as a stop.
 */
export function doubtsAbout(
  outcome: Seen | null,
  mates: MatesPowerCut | null,
  notes: NotesBeside = NO_NOTES,
): readonly Doubt[] {
  if (outcome !== null && takeOutGate(outcome, true).verdict === 'discard') return [];
  const noted = notedCut(outcome, mates, notes);
  const told = mates !== null && (outcome === null || outcome.powerCut === null);
  const cut: Doubt[] = [
    ...(told ? [{ code: 'failed in its hold' as const, ...mates }] : []),
    ...(noted ? [{ code: 'failed by a note' as const, ...noted }] : []),
  ];
  if (outcome === null) return cut;
  const { against, bubblesAlone } = weigh(outcome, mates);
  return bubblesAlone && noted === null ? [] : [...against, ...cut];
}

/**
 * Why a jar is in doubt as what others descend from; null where it is not. Fine bubbles are not handed down:
 * they are normal for this kind of culture.
 */
export function inDoubtBecause(
  outcome: Seen | null,
  mates: MatesPowerCut | null,
  notes: NotesBeside = NO_NOTES,
): readonly InShort[] | null {
  if (outcome !== null && takeOutGate(outcome, true).verdict === 'discard') return null;
  const { against, slow } = outcome === null ? { against: [], slow: [] } : weigh(outcome, mates);
  const cut = outcome === null || outcome.powerCut === null ? (mates ?? notedCut(outcome, mates, notes)) : null; // prettier-ignore
  const why: InShort[] = [
    ...[...slow, ...against].flatMap((reason): InShort[] =>
      reason.code === 'acid' || reason.code === 'slow start' || reason.code === 'power cut' ? [reason] : [],
    ),
    ...(cut
      ? [
          {
            code: 'failed' as const,
            hours: cut.hours,
            what: ('what' in cut && cut.what) || ['power' as const],
          },
        ]
      : []),
  ];
  return why.length === 0 ? null : why;
}

/** What is to be looked at before it seeds anything: a slow start, fine bubbles alone (normal by themselves: common practice, no
 * source). */
export function asksAbout(
  outcome: Seen | null,
  mates: MatesPowerCut | null,
  notes: NotesBeside = NO_NOTES,
): readonly SeedLook[] {
  const { slow, bubblesAlone } = outcome === null ? { slow: [], bubblesAlone: false } : weigh(outcome, mates);
  const bubbles = bubblesAlone && notedCut(outcome, mates, notes) === null;
  return [...slow, ...(bubbles ? [{ code: 'fine bubbles' as const }] : [])];
}

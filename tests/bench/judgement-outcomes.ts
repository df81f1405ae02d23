// Invented lines for the judgement bench, from the milk up: what a culture does in each jar, what a keeper sees of it and
// writes down. How fast it sets, how sour and how firm it gets are drawn apart; nothing here knows how a score is made.
import { constantProfile } from '../../core/growth/warm-hours';
import { SET_WORDS } from '../../core/ledger/jar-fields';
import { MADE_AS_EVER } from '../../core/vigour/evidence';
import type { JarEvidence, Seen } from '../../core/vigour/jar-evidence';
import { normal, type Random } from './judgement-lines';

/** How much batches of a healthy line differ, and what a slipping one loses a generation. */
export interface Culture {
  /** Standard deviation of the set time from batch to batch, as a part of itself. */
  readonly uneven: number;
  /** Added to the set time a generation, as a part of itself. */
  readonly slower: number;
  /** Added to the end pH, and taken from the firmness (in set words), a generation: a long hold hides most of a slower start. */
  readonly lessSour: number;
  readonly lessFirm: number;
}
export const SLIPPING = { slower: 0.09, lessSour: 0.03, lessFirm: 0.2 } as const;
export const EVEN = { slower: 0, lessSour: 0, lessFirm: 0 } as const;

export interface Keeping {
  /** The jars are looked at every so many hours until they have set; null: nobody looks before take-out. */
  readonly looksEvery: number | null;
  /** A meter is held in at the early check, and at the end. */
  readonly earlyPh: boolean;
  readonly endPh: boolean;
}
export const KEEPINGS = {
  'looked at every 3 h, pH by meter early and at the end': { looksEvery: 3, earlyPh: true, endPh: true },
  'set word and end pH by meter': { looksEvery: null, earlyPh: false, endPh: true },
  'set word alone': { looksEvery: null, earlyPh: false, endPh: false },
} as const satisfies Record<string, Keeping>;

const JARS = 4;
const SET_HOURS = 12;
const HOLD_HOURS = 36;
const WARM = 38;
const CHECK = 8;
/** One batch in six is forgotten in part, one in eight runs two or three degrees cool; every second has one jar with a fibre. */
const UNSEEN = 1 / 6;
const COOL = 1 / 8;

/** How much slower a jar is at a temperature: about a tenth for each degree below 38 (an assumption of this bench). */
const slowness = (celsius: number): number => 1.1 ** (WARM - celsius);

/** The evidence of a line of so many batches, as it would come out of a ledger. */
export function inventOutcomes(
  culture: Culture,
  keeping: Keeping,
  batches: number,
  random: Random,
): JarEvidence[] {
  const jars: JarEvidence[] = [];
  for (let batch = 1; batch <= batches; batch++) {
    const first = batch === 1;
    const lost = batch - 1;
    const celsius = random() < COOL ? WARM - 2 - random() : WARM + 0.4 * normal(random);
    const shared = culture.uneven * normal(random);
    const [sourness, firmness] = [0.05 * normal(random), 0.4 * normal(random)];
    for (let letter = 0; letter < JARS; letter++) {
      const fibre = letter === JARS - 1 && batch % 2 === 0;
      const own = (culture.uneven / 2) * normal(random);
      const faster = Math.exp(shared + own) * (1 + culture.slower) ** lost * slowness(celsius);
      const setAt = SET_HOURS * faster * (first ? 1.2 : 1);
      const ph = 4.35 + culture.lessSour * lost + sourness + 0.03 * normal(random);
      const firm =
        3.4 - culture.lessFirm * lost + firmness + 0.3 * normal(random) - (fibre ? 1 : 0) - (first ? 1 : 0);
      // Unripe at the early check the more, the later it sets: half a pH unit for each doubling.
      const earlyPh = 5.3 + 0.5 * Math.log2(faster) + 0.05 * normal(random);
      const every = keeping.looksEvery;
      const look = every === null ? null : Math.floor(setAt / every) * every;
      const seen: Seen = {
        earlyCheckHours: keeping.earlyPh ? CHECK : null,
        earlySet: null,
        earlyPh: keeping.earlyPh ? Math.round(earlyPh * 100) / 100 : null,
        setAfterHours: look,
        setByHours: look === null ? null : look + (every ?? 0),
        setWord: SET_WORDS[Math.min(4, Math.max(0, Math.floor(firm)))] ?? null,
        whey: null,
        ph: keeping.endPh ? Math.round(ph * 100) / 100 : null,
        phHow: keeping.endPh ? 'meter' : null,
        tang: null,
      };
      jars.push({
        key: jars.length + 1, label: `jar ${jars.length + 1}`, madeOn: `${2000 + batch}-01-01`, batch, hold: batch,
        lines: [1], mixes: false, generation: batch, founding: first, spoiled: false, spoiledUnopened: false, held: null,
        outcome: random() < UNSEEN ? null : seen, additions: fibre ? ['oat bran'] : [], milk: 'whole milk', made: { ...MADE_AS_EVER, seedMl: 45 },
        seed: first ? 'source 1' : `jar of ${batch - 1}`, seedBatch: first ? null : batch - 1, profile: constantProfile(HOLD_HOURS, celsius), warmth: null,
        heldHours: HOLD_HOURS, seedStorage: first ? null : { fridgeDays: 3 + Math.floor(8 * random()), frozenDays: 0, freezings: 0 },
      }); // prettier-ignore
    }
  }
  return jars;
}

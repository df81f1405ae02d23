// Small ledgers made from a number, through the contract's own writes: batches, holds, portions, outcomes, cautions and
// lifts, mixes, mistakes, lost jars, undo and redo, notes brought in. The same number gives the same ledger everywhere.
import { type CallName, contract, type Input, type Reply, type Result } from '../../core/contract';
import type { BatchEntry } from '../../core/contract';
import { SET_WORDS } from '../../core/ledger/jar-fields';
import { DISCARD_SIGNS, type Outcome } from '../../core/ledger/records';
import { handlers } from '../../main/calls';
import { PlacedClock } from '../../main/ledger/demo';
import { stillClock } from '../../main/ledger/clock';
import { idGenerator } from '../../main/ledger/ids';
import { Ledger } from '../../main/ledger/ledger';
import { Refused } from '../../main/refusal';
import type { Session } from '../../main/session';
import { seededNumbers } from '../families';
import { unseen } from './ledger-files';

type Seen = Omit<Outcome, 'jar'>;
type Jar = BatchEntry['jars'][number];
type Seeding = Jar['seedings'][number];

const DAY = 86_400_000;
const START = Date.parse('2025-10-01T12:00:00Z');
const dayAt = (days: number): string => new Date(START + days * DAY).toISOString().slice(0, 10);
const momentAt = (days: number, hours: number): string =>
  `${new Date(START + days * DAY + (hours - 12) * 3_600_000).toISOString().slice(0, 19)}Z`;

interface Kept {
  readonly id: string;
  readonly day: number;
  readonly batch: string;
  /** Said to be gone: it seeds nothing from then on. */
  gone: boolean;
}

/** One ledger in memory and the calls that fill it. Refused writes leave it as it was, and are counted. */
export class Generated {
  readonly ledger: Ledger;
  refused = 0;
  readonly #random: () => number;
  readonly #clock: PlacedClock;
  readonly #sources: string[] = [];
  readonly #packages: Record<'source' | 'milk' | 'addition', string[]> = {
    source: [],
    milk: [],
    addition: [],
  };
  readonly #jars: Kept[] = [];
  readonly #portions: { id: string; jar: string; day: number; pieces: boolean; gone: boolean }[] = [];
  #day = 0;

  /** @param batches so many of them; drawn from two to six if not given */
  constructor(seed: number, batches: number | null = null) {
    this.#random = seededNumbers(seed);
    this.#clock = new PlacedClock(stillClock(momentAt(0, 20)));
    const bytes = seededNumbers(seed + 7);
    this.ledger = Ledger.inMemory('', {
      clock: this.#clock,
      newId: idGenerator({
        milliseconds: () => this.#clock.milliseconds(),
        random: (length) => Uint8Array.from({ length }, () => Math.floor(bytes() * 256)),
      }),
    });
    this.#fill(batches);
  }

  /** A call as the window makes it. */
  ask<N extends CallName>(name: N, input: Input<N>): Result<Reply<N>> {
    const handler = handlers[name as keyof typeof handlers] as (...given: unknown[]) => Reply<N>;
    const session = { ledger: this.ledger } as Pick<Session, 'ledger'>;
    try {
      return { ok: true, value: handler(session, contract[name].input.parse(input), { step: () => undefined, look: () => undefined }) };
    } catch (error) {
      if (error instanceof Refused) return { ok: false, error: error.refusal };
      throw error;
    }
  } // prettier-ignore

  #write<N extends CallName>(name: N, input: Input<N>): Reply<N> | null {
    const result = this.ask(name, input);
    if (result.ok) return result.value;
    this.refused++;
    return null;
  }

  #chance = (part: number): boolean => this.#random() < part;
  #below = (most: number): number => Math.floor(this.#random() * most);
  #one = <T>(list: readonly T[]): T => list[this.#below(list.length)] as T;
  #maybe = <T>(part: number, make: () => T): T | null => (this.#chance(part) ? make() : null);
  #ml = (most: number): { value: number; unit: 'mL'; typed: string | null } => {
    const value = 5 * (1 + this.#below(most / 5));
    return { value, unit: 'mL', typed: this.#maybe(0.5, () => `${value} ml`) };
  };

  #fill(wanted: number | null): void {
    this.#larder();
    const batches = wanted ?? 2 + this.#below(5);
    for (let at = 0; at < batches; at++) {
      this.#day += 2 + this.#below(9);
      this.#clock.moveTo(momentAt(this.#day, 20));
      this.#batch();
      const events = this.#below(6);
      for (let event = 0; event < events; event++) this.#event();
    }
    if (this.#chance(0.2)) this.#notes();
    if (this.#chance(0.3)) this.#undoing();
    this.#clock.moveTo(momentAt(this.#day + this.#below(40), 20));
  }

  #larder(): void {
    for (const name of ['Blue Tin', 'Meadow Pot', 'Hillside pot'].slice(0, 1 + this.#below(3))) {
      const culture = name === 'Hillside pot';
      const done = this.#write('source.save', {
        source: {
          id: null, name, form: culture ? 'culture' : 'capsules',
          strains: culture ? [] : [
            { genus: 'Lactobacillus', species: 'inventus', designation: `${name} 1`, countPerPiece: this.#maybe(0.6, () => 5e8) },
            { genus: 'Lactobacillus', species: 'fictus', designation: `${name} 2`, countPerPiece: 2e8 },
          ],
          blendTotalPerPiece: this.#maybe(0.4, () => 1e9), guaranteed: this.#maybe(0.5, () => 'expiry' as const),
          receivedFrom: culture ? 'a neighbour' : null, knownGenerations: culture ? this.#maybe(0.5, () => 4) : null,
          note: this.#maybe(0.2, () => 'kept cool'),
        },
      }); // prettier-ignore
      if (done) this.#sources.push(done.id);
    }
    for (const of of ['source', 'milk', 'addition'] as const) {
      if (!this.#chance(0.6)) continue;
      const done = this.#write('package.save', {
        package: {
          id: null, of, source: of === 'source' ? (this.#sources[0] ?? null) : null, name: `${of} box`,
          size: of === 'source' ? { value: 30, unit: 'pieces', typed: null } : { value: 1000, unit: of === 'milk' ? 'mL' : 'g', typed: '1' },
          price: this.#maybe(0.8, () => ({ minor: 199, currency: 'EUR', typed: '1,99' })),
          boughtOn: dayAt(0), openedOn: this.#maybe(0.5, () => dayAt(1)), bestBefore: null, note: this.#maybe(0.3, () => 'from the corner'),
        },
      }); // prettier-ignore
      if (done) this.#packages[of].push(done.id);
    }
    if (this.#chance(0.2)) {
      this.#write('preferences.save', {
        theme: 'dark', temperatures: '°F', volumes: 'spoons', spoons: 'US', dates: 'month first', currency: 'EUR',
        seedFridgeDays: this.#maybe(0.7, () => 14), seedFreezerDays: 300, mostGenerations: this.#maybe(0.5, () => 6), jarFollowsHours: this.#maybe(0.5, () => 1.5),
      }); // prettier-ignore
    }
  }

  #seedings(): Seeding[] {
    const from = (): Seeding => {
      const portions = this.#portions.filter(({ day, gone }) => day <= this.#day && !gone);
      if (portions.length > 0 && this.#chance(0.3)) {
        const { id, jar, pieces } = this.#one(portions);
        const amount = pieces
          ? { value: 1 + this.#below(3), unit: 'pieces' as const, typed: null }
          : this.#ml(40);
        return { fromJar: jar, portion: id, part: null, source: null, package: null, amount };
      }
      const made = this.#jars.filter(({ day, gone }) => day < this.#day && !gone);
      if (made.length > 0 && this.#chance(0.85)) {
        const jar = this.#chance(0.6) ? (made.at(-1) as Kept) : this.#one(made);
        return {
          fromJar: jar.id, portion: null, part: this.#maybe(0.2, () => this.#one(['whey', 'curd', 'mixed'] as const)),
          source: null, package: null, amount: this.#maybe(0.9, () => this.#ml(60)),
        }; // prettier-ignore
      }
      const source = this.#one(this.#sources);
      const box = source === this.#sources[0] ? (this.#packages.source[0] ?? null) : null;
      return { fromJar: null, portion: null, part: null, source, package: box, amount: { value: 1 + this.#below(10), unit: 'pieces', typed: null } }; // prettier-ignore
    };
    const how = this.#random();
    return Array.from({ length: how < 0.08 ? 0 : how < 0.8 ? 1 : how < 0.95 ? 2 : 3 }, from);
  }

  #hold(): BatchEntry['holds'][number] {
    const start = 18 + this.#below(4);
    const hours = 12 + 2 * this.#below(13);
    const timed = this.#chance(0.6);
    const celsius = 36 + this.#below(5);
    const read = timed && this.#chance(0.4);
    return {
      startedAt: timed ? momentAt(this.#day - 2, start) : null,
      endedAt: timed && this.#chance(0.8) ? momentAt(this.#day - 2, start + hours) : null,
      hours: timed ? this.#maybe(0.3, () => hours + 2) : this.#maybe(0.8, () => hours),
      planned: this.#maybe(0.8, () => ({ value: celsius, unit: '°C' as const, typed: this.#maybe(0.5, () => `${celsius} °C`) })),
      probe: read || this.#chance(0.1) ? this.#one(['air', 'bath', 'jar'] as const) : null,
      readings: read
        ? Array.from({ length: 3 + this.#below(6) }, (_, at) => ({
            at: momentAt(this.#day - 2, start + at * 3), temperature: { value: celsius - 2 + this.#below(5), unit: '°C' as const, typed: null },
          }))
        : [],
      note: this.#maybe(0.15, () => this.#one(['lid of the box was open', 'power cut for an hour', 'quiet night'])),
    }; // prettier-ignore
  }

  /** @param age days since the jar was made: it can't have been open for longer */
  #outcome(age: number): Seen {
    const early = this.#chance(0.4);
    const spoiled = this.#chance(0.12);
    const opened = spoiled && this.#chance(0.4);
    const ph = this.#maybe(0.5, () => 4 + this.#below(12) / 10);
    const cut = this.#maybe(0.3, () => this.#chance(0.3));
    const phHow = ph === null ? null : this.#maybe(0.8, () => this.#one(['meter', 'strip'] as const));
    return {
      ...unseen,
      earlyCheckHours: early ? 8 : null, earlySet: early ? this.#one(['loose', 'starting', 'set'] as const) : null,
      earlyPh: early ? this.#maybe(0.5, () => 5 + this.#below(10) / 10) : null, earlySour: early ? this.#chance(0.8) : null,
      setAfterHours: early ? this.#maybe(0.5, () => 8) : null, setByHours: this.#maybe(0.3, () => 12 + this.#below(8)),
      setAtTakeOut: this.#maybe(0.8, () => this.#chance(0.92)), setWord: this.#maybe(0.9, () => this.#one(SET_WORDS)),
      texture: this.#maybe(0.3, () => this.#one(['smooth', 'grainy', 'a few fine bubbles', 'stringy'])),
      whey: this.#maybe(0.6, () => this.#one(['none', 'a little', 'some', 'a lot'] as const)),
      tang: this.#maybe(0.6, () => this.#one(['none', 'mild', 'clear', 'sharp'] as const)),
      smell: this.#maybe(0.2, () => this.#one(['fresh', 'buttery', 'yeasty', 'a bit off'])),
      colour: this.#maybe(0.2, () => this.#one(['cream', 'white', 'a pink shimmer'])),
      ph, phHow, ...(phHow === 'meter' ? { phChecked: this.#maybe(0.7, () => this.#chance(0.8)) } : {}),
      signs: spoiled ? [...new Set([this.#one(DISCARD_SIGNS), this.#one(DISCARD_SIGNS)])] : [],
      bubbles: this.#maybe(0.4, () => this.#one(['none', 'fine'] as const)),
      powerCut: cut, powerCutHours: cut === true ? this.#maybe(0.6, () => 1 + this.#below(5)) : null,
      spoiledSaid: this.#chance(0.04), seenAt: spoiled ? (opened ? 'after opening' : this.#maybe(0.6, () => 'take-out' as const)) : this.#maybe(0.2, () => 'take-out' as const),
      openedDays: opened ? this.#maybe(0.8, () => Math.min(this.#below(25), age)) : null, fibreDidThis: this.#chance(0.06),
      note: this.#maybe(0.25, () => this.#one(['nice one', 'smells like feet', 'best so far', 'mould on top?', 'took it to the neighbours'])),
    };
  } // prettier-ignore

  #jar(letter: string, holds: number): Jar {
    const gone = this.#maybe(0.15, () => dayAt(this.#day));
    const planned = this.#chance(0.05);
    return {
      letter, state: planned ? 'planned' : 'made', vessel: this.#maybe(0.4, () => 'quart jar'),
      finalVolume: this.#maybe(0.8, () => ({ value: 946, unit: 'mL' as const, typed: '1 qt' })),
      finalVolumeKnown: this.#maybe(0.4, () => this.#one(['measured', 'filled to the vessel', 'milk plus seed'] as const)),
      milk: this.#maybe(0.7, () => this.#one(['whole milk', 'half and half'])), milkAmount: this.#maybe(0.5, () => ({ value: 900, unit: 'mL' as const, typed: null })),
      milkPackage: this.#packages.milk.length > 0 ? this.#maybe(0.6, () => this.#packages.milk[0] ?? '') : null,
      countPerMl: this.#maybe(0.06, () => 2e9), onShelf: planned ? null : gone === null ? this.#maybe(0.5, () => this.#chance(0.8)) : this.#maybe(0.5, () => false), goneOn: planned ? null : gone,
      note: this.#maybe(0.15, () => this.#one(['for the club', 'lid bulged a little', 'thick'])),
      hold: holds > 0 ? this.#maybe(0.9, () => this.#below(holds)) : null,
      additions: Array.from({ length: this.#chance(0.5) ? 1 + this.#below(2) : 0 }, (_, at) => ({
        name: ['potato starch', 'acacia fibre'][at] ?? '', planned: this.#maybe(0.4, () => ({ value: 30, unit: 'mL' as const, typed: '2 tbsp' })),
        actual: this.#maybe(0.7, () => ({ value: 20, unit: 'g' as const, typed: '20 g' })), package: at === 0 ? (this.#packages.addition[0] ?? null) : null,
      })),
      seedings: this.#seedings(), outcome: planned ? null : this.#maybe(0.4, () => this.#outcome(2)),
    };
  } // prettier-ignore

  #batch(): void {
    const holds = Array.from({ length: this.#below(3) }, () => this.#hold());
    const jars = ['a', 'b', 'c', 'd']
      .slice(0, 1 + this.#below(4))
      .map((letter) => this.#jar(letter, holds.length));
    const done = this.#write('batch.record', {
      madeOn: dayAt(this.#day - 2), word: this.#maybe(0.2, () => 'plain'), note: this.#maybe(0.15, () => 'milk from the farm'),
      holds, jars, sameLabelMeant: false, draft: null, why: 'meant so',
    }); // prettier-ignore
    done?.jars.forEach((id, at) => {
      const made = jars[at];
      if (made?.state === 'made')
        this.#jars.push({ id, day: this.#day - 2, batch: done.batch, gone: made.goneOn !== null });
    });
  }

  #event(): void {
    const jar = this.#jars.length > 0 ? this.#one(this.#jars) : null;
    if (!jar) return;
    const { id } = jar;
    const what = this.#below(17);
    if (what < 6)
      this.#write('outcome.save', { jar: id, outcome: this.#chance(0.95) ? this.#outcome(this.#day - jar.day) : null, onShelf: this.#maybe(0.3, () => this.#chance(0.7)) }); // prettier-ignore
    else if (what < 8) this.#portion(jar);
    else if (what === 8) {
      jar.gone = this.#chance(0.5);
      this.#write('jar.correct', { id, changes: jar.gone ? { onShelf: false, goneOn: dayAt(this.#day) } : { note: 'thin after all', milk: 'goat milk', countPerMl: null } }); // prettier-ignore
    } else if (what === 9)
      this.#write('jar.correct', { id, changes: { finalVolume: this.#ml(900), milkAmount: this.#ml(800), onShelf: this.#maybe(0.8, () => true) } }); // prettier-ignore
    else if (what === 10) this.#correctHold(jar);
    else if (what === 11)
      this.#write('batch.addHold', { batch: jar.batch, hold: this.#hold(), jars: this.#chance(0.8) ? [id] : [] }); // prettier-ignore
    else if (what === 12)
      this.#write('seeding.set', { jar: id, seedings: this.#seedings(), why: 'looked it up' });
    else if (what === 13)
      this.#write('addition.set', { jar: id, additions: this.#chance(0.5) ? [] : this.#jar('x', 0).additions }); // prettier-ignore
    else if (what === 14) this.#lift();
    else if (what === 15 && this.#chance(0.3)) this.#rare(jar);
    else this.#undoing();
  }

  #portion({ id, day }: Kept): void {
    const before = this.#portions.filter((one) => one.jar === id).at(-1);
    const pieces = this.#maybe(0.5, () => 2 + this.#below(10));
    const corrects = before !== undefined && this.#chance(0.5);
    const kept = Math.min(this.#day, day + 2);
    const goneOn = this.#maybe(0.15, () => dayAt(this.#day));
    const done = this.#write('portion.save', {
      portion: {
        id: corrects ? before.id : null, jar: id, part: this.#maybe(0.3, () => this.#one(['whey', 'curd', 'mixed'] as const)),
        place: this.#one(['fridge', 'freezer', 'dried'] as const), pieces, amount: this.#maybe(0.7, () => this.#ml(200)), keptOn: dayAt(kept),
        goneOn, reserve: this.#chance(0.5), note: this.#maybe(0.2, () => this.#one(['clean', 'a pink spot'])),
      },
    }); // prettier-ignore
    if (done && !corrects)
      this.#portions.push({
        id: done.id,
        jar: id,
        day: kept,
        pieces: pieces !== null,
        gone: goneOn !== null,
      });
    if (done && corrects) before.gone = goneOn !== null;
  }

  #correctHold({ batch }: Kept): void {
    const found = this.ask('batch.get', { id: batch });
    const hold = found.ok ? found.value.holds[0] : undefined;
    if (!hold) return;
    const { note, planned, hours, ...times } = this.#hold();
    this.#write('hold.correct', { id: hold.id, changes: this.#chance(0.5) ? { note, planned } : this.#chance(0.5) ? { hours } : times }); // prettier-ignore
  }

  #lift(): void {
    for (const { id } of this.#jars) {
      const found = this.ask('jar.get', { id });
      const standing = found.ok ? found.value.cautions.find(({ cleared, how }) => !cleared && !how.startsWith('condemned')) : undefined; // prettier-ignore
      if (!standing || !this.#chance(0.6)) continue;
      this.#write('caution.clear', { jar: id, of: standing.of, reason: 'looked twice and smelled' });
      return;
    }
  }

  #rare({ id }: Kept): void {
    if (this.#chance(0.5)) this.#write('jar.mistake', { id, why: 'typed twice' });
    else this.#write('jar.lost', { madeOn: dayAt(this.#day - 3), label: this.#maybe(0.5, () => 'old pot'), note: null }); // prettier-ignore
  }

  #undoing(): void {
    const times = 1 + this.#below(2);
    for (let at = 0; at < times; at++) this.#write('act.undo', { act: null });
    if (this.#chance(0.5)) this.#write('act.redo', {});
  }

  #notes(): void {
    const rows = ['a', 'b', 'c'].slice(0, 1 + this.#below(3)).map((letter) => {
      const day = dayAt(this.#day + 1);
      const set = this.#one(['firm', 'soft', 'runny', 'spoonable', '']);
      return `${day},${letter},10 capsules Blue Tin,1 qt whole milk,2 tbsp acacia fibre,${24 + this.#below(12)},38 °C,${set},${this.#one(['4.2', ''])},${this.#one(['', 'pink spots', 'tasty'])}`; // prettier-ignore
    });
    const text = `Date,Jar,Started from,Milk,Fibre,Hours,Temp,Set,pH,Notes\n${rows.join('\n')}\n`;
    this.#clock.moveTo(momentAt(this.#day + 4, 20));
    const file = { name: 'kitchen.csv', bytes: new TextEncoder().encode(text) };
    this.#write('notes.bringIn', { file });
    if (this.#chance(0.5)) this.#write('notes.bringIn', { file: { ...file, bytes: new TextEncoder().encode(text.replace(',soft,', ',firm,')) } }); // prettier-ignore
  }
}

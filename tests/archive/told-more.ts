// What a random keeper rarely comes to by single calls: tastings, proofs and readings of an appliance, cubes, prices, and
// batches of which only a range of days is known. Numbers choose what it says, so that the same numbers give the same ledger.
import type { Input } from '../../core/contract';
import { batchOf, plainJar } from '../ledger/ledger-files';
import { at, day, g, ml, pick } from '../rules/keeper-values';
import type { RandomKeeper } from '../rules/random-keeper';

type Facts = Input<'facts.record'>['facts'];
type Numbers = () => number;

/** Tables that must hold at least so many rows after three times tellMore, some of it refused or undone. */
export const TOLD = {
  session: 1,
  serving: 3,
  mark: 1,
  taster: 2,
  appliance: 1,
  hold: 2,
  stay: 1,
  portion: 1,
  package: 2,
};

/** How many batches are of a range of days. */
export const ranged = ({ ledger }: RandomKeeper): number =>
  ledger.rows.count('SELECT count(*) FROM batch WHERE made_from IS NOT NULL');

function batchOfARange(keeper: RandomKeeper, number: Numbers): void {
  const from = number() % 10;
  const letters = ['a', 'b', 'c'].slice(0, 1 + (number() % 3));
  const about = { madeFrom: day(from), madeTo: day(from + (number() % 9)), sameLabelMeant: true };
  keeper.ask('batch.record', batchOf(null, letters.map((letter) => plainJar(letter)), { ...about, word: `about ${number()}` })); // prettier-ignore
  keeper.meanAll();
}

/** A tasting of three jars by two tasters, told in one of the ways a mark may be given. */
function tasting(keeper: RandomKeeper, number: Numbers): void {
  const jars = keeper.ids('jar').slice(-3);
  const [batch] = keeper.ids('batch').slice(-1);
  if (batch === undefined || jars.length < 2) return;
  const task = pick(['rank', 'score'] as const, number());
  const told = (n: number): object =>
    task === 'rank'
      ? { rank: 1 + (n % 3) }
      : n % 4
        ? { score: n / 8 }
        : { word: pick(['mild', '乳酸', 'a "sharp" one'], n) };
  const tasters = ['one', 'other'];
  const facts = [
    { kind: 'session', ref: 'tasting', trial: null, day: day(number()), task, draw: `drawn from ${number()}` },
    ...tasters.map((ref) => ({ kind: 'taster', ref, name: `taster ${ref} ${number()}` })),
    { kind: 'tasterAvoids', taster: 'one', allergen: pick(['oats', 'nuts'], number()) },
    ...tasters.flatMap((taster, of) =>
      jars.flatMap((jar, place) => [
        { kind: 'serving', ref: `${taster}${place}`, session: 'tasting', taster, place: place + 1, jar, code: 100 + of * 300 + place * 7 + (number() % 7) },
        ...(number() % 5 ? [{ kind: 'mark', serving: `${taster}${place}`, aspect: pick(['liking', 'tang'], of), ...told(number()) }] : []),
      ]),
    ),
  ]; // prettier-ignore
  keeper.ask('facts.record', { facts: facts as Facts });
}

/** An appliance, its proof by water, a hold of a jar in it, and readings of both. */
function warmth(keeper: RandomKeeper, number: Numbers): void {
  const [jar] = keeper.ids('jar').slice(number() % 2 ? -1 : 0);
  const type = pick(['bath', 'box', 'cooker', null], number());
  const facts = [
    { kind: 'appliance', ref: 'box', name: `Warm box ${number()}`, type },
    { kind: 'hold', ref: 'proof', appliance: 'box', purpose: 'proof', began: at(number(), 6), hours: 1 + (number() % 40), filled: number() % 2 > 0 },
    { kind: 'hold', ref: 'hold', appliance: 'box', planned: { value: 37 + (number() % 3) / 10, unit: '°C', typed: null }, began: at(1, 8) },
    ...(jar === undefined ? [] : [{ kind: 'stay', jar, hold: 'hold', came: null, went: null }]),
    { kind: 'interruption', hold: 'hold', what: pick(['power', 'heater', 'lid'], number()), hours: (number() % 30) / 4 },
    { kind: 'series', ref: 'probe', hold: 'proof', place: 'bath', spot: pick(['centre', 'edge', null], number()) },
  ]; // prettier-ignore
  const done = keeper.ask('facts.record', { facts: facts as Facts });
  if (!done.ok) return;
  const readings = [0, 1, 2].map((hour) => ({ at: at(1, 9 + hour), c: 20 + (number() % 250) / 10 }));
  keeper.ask('readings.add', { series: done.value.ids.at(-1) ?? '', readings });
}

function kept(keeper: RandomKeeper, number: Numbers): void {
  const jar = pick([...keeper.ids('jar'), ''], number());
  const pieces = number() % 2 ? 1 + (number() % 12) : null;
  const facts = [
    { kind: 'portion', ref: 'cubes', jar, form: pick(['cubes', 'pot', 'flakes'], number()), place: 'freezer', pieces, amount: pick([null, ml(30), g(25)], number()), keptOn: day(13), reserve: number() % 2 > 0 },
    { kind: 'movement', portion: 'cubes', what: 'freezer', day: day(13) },
  ]; // prettier-ignore
  if (jar !== '') keeper.ask('facts.record', { facts: facts as Facts });
}

function bought(keeper: RandomKeeper, number: Numbers): void {
  const price = {
    minor: number() * 7,
    currency: pick(['EUR', 'GBP', 'JPY'], number()),
    typed: pick([null, '=1+1', '3,49'], number()),
  };
  keeper.ask('package.save', {
    package: {
      id: null, of: pick(['milk', 'addition'] as const, number()), source: null, name: `carton ${number()}`, size: pick([null, ml(1000), g(500)], number()),
      price, boughtOn: day(number()), openedOn: null, bestBefore: null, note: pick([null, 'from the corner\n"quoted"'], number()),
    },
  }); // prettier-ignore
}

/** One more of each, as the numbers say. */
export function tellMore(keeper: RandomKeeper, number: Numbers): void {
  for (const tell of [batchOfARange, warmth, kept, bought, tasting]) tell(keeper, number);
}

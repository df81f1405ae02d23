// The costs screen: what is taken of packages and how jars came out, round what core says.
import type { Reply } from '../../../core/contract';
import { costSheet, type CameOut, type JarTaken } from '../../../core/advice/cost-sheet';
import { isWeakWord } from '../../../core/advice/weak';
import { usualCosts, type Taken } from '../../../core/advice/spent';
import { printAmount } from '../../../core/quantities/quantities';
import { MEASURES } from '../../../core/quantities/spoons';
import { NOT_COUNTED, usualWords } from '../../../core/says/cost-says';
import {
  costedSays,
  fromSays,
  lacksSays,
  OWN_CUP,
  sheetHead,
  SHOP_CUP,
  usualFromSays,
} from '../../../core/says/cost-sheet-says';
import type { UsualCost } from '../../../core/shapes/cost-codes';
import { takenOf } from '../derived/spent-rows';
import { ownPrices } from '../derived/own-prices';
import type { Ledger } from '../ledger';
import { listPackages } from './read-lists';

type Sheet = Reply<'cost.sheet'>;

function cameOut({ index }: Ledger, key: number): CameOut {
  const { safety, setWord, outcomeKnown } = index.jar(key);
  if (safety.discard !== null) return 'discarded';
  if (!outcomeKnown || setWord === null) return 'unknown';
  return isWeakWord(setWord) ? 'weak' : 'good';
}

/** Made jars with all that went into each. */
function jarsTaken(ledger: Ledger, taken: readonly Taken[]): JarTaken[] {
  const byJar = new Map<number, Taken[]>();
  for (const one of taken) {
    if (one.what === 'start' || !ledger.index.family.has(one.jar)) continue;
    byJar.set(one.jar, [...(byJar.get(one.jar) ?? []), one]);
  }
  return [...byJar].map(([key, all]) => {
    const { finalVolume } = ledger.rows.get('jar', key);
    return { taken: all, volume: finalVolume?.unit === 'mL' ? finalVolume.value : null, cameOut: cameOut(ledger, key) };
  });
} // prettier-ignore

/** The money that is counted in: the commonest of what has a price, else the keeper's own. */
function currencyOf(costs: readonly UsualCost[], own: string): string {
  const times = new Map<string, number>();
  for (const { usual, priced } of costs)
    if (usual !== null) times.set(usual.currency, (times.get(usual.currency) ?? 0) + priced);
  return [...times].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? own;
}

const usualFigure = (cost: UsualCost): Sheet['additions'][number] => ({
  name: cost.name,
  minor: cost.usual?.minor ?? null,
  atLeast: false,
  says: usualWords(cost),
  from: usualFromSays(cost),
});

/** Packages in use of which price or size is not noted. */
const missingOf = (ledger: Ledger): Sheet['missing'] =>
  listPackages(ledger)
    .packages.filter(({ price, size, uses }) => uses > 0 && (price === null || size === null))
    .map(({ id, name, price, size }) => ({
      package: id,
      name,
      says: lacksSays({ price: price === null, size: size === null }),
    }));

export function getCostSheet(ledger: Ledger): Sheet {
  const { rows, preferences } = ledger;
  const own = ownPrices(ledger);
  const taken = takenOf(rows, own.milk);
  const usual = usualCosts(taken);
  const currency = currencyOf(usual, preferences.currency);
  const cupMl = MEASURES[preferences.spoons].cup;
  const cup = printAmount({ value: cupMl, unit: 'mL', typed: null }, { ...preferences, volumes: 'metric' });
  const sheet = costSheet(jarsTaken(ledger, taken), currency, cupMl);
  const shopCup = own.shop === null ? null : Math.round((own.shop.minor * cupMl) / own.shop.ml);
  const start = usual.find(({ what }) => what === 'start');
  const figure = (what: 'jar' | 'cup' | 'good jar', name: string): Sheet['figures'][number] => {
    const cost = { jar: sheet.jar, cup: sheet.cup, 'good jar': sheet.goodJar }[what];
    return {
      what, name, minor: cost && Math.round(cost.minor), atLeast: cost?.atLeast ?? false,
      says: costedSays(cost, currency), from: fromSays(what, cost, cup),
    }; // prettier-ignore
  };
  return {
    currency,
    ...sheetHead(sheet, shopCup, currency),
    figures: [
      figure('jar', 'A jar'),
      figure('cup', `A cup (${cup})`),
      figure('good jar', 'A good jar'),
      ...(start ? [{ what: 'start' as const, ...usualFigure(start), name: 'A fresh start' }] : []),
    ],
    additions: usual.filter(({ what }) => what === 'addition').map(usualFigure),
    bars: [
      { name: OWN_CUP, minor: sheet.cup && Math.round(sheet.cup.minor), says: costedSays(sheet.cup, currency) },
      { name: SHOP_CUP, minor: shopCup, says: costedSays(shopCup === null ? null : { minor: shopCup, atLeast: false }, currency) },
    ],
    milkPerLitre: own.milk?.minor ?? null,
    shop: own.shop,
    missing: missingOf(ledger),
    notCounted: NOT_COUNTED,
  };
} // prettier-ignore

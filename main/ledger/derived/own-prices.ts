// Prices that the keeper typed and that belong to no package: a litre of milk, and what the shop asks.
import type { Spent } from '../../../core/shapes/cost-codes';
import type { Preferences } from '../../../core/ledger/records';
import type { Rows } from '../facts/fact-rows';

/** Under which names the ledger keeps them: minor units, and mL. */
export const PRICE_SETTINGS = {
  milk: 'milk price a litre',
  shop: 'shop price',
  shopMl: 'shop amount mL',
} as const;

export interface OwnPrices {
  /** Of a litre. */
  readonly milk: Spent | null;
  readonly shop: { readonly minor: number; readonly ml: number } | null;
}

/** Null where none was typed. */
export function ownPrices(of: { readonly rows: Rows; readonly preferences: Preferences }): OwnPrices {
  const found = of.rows.prepare('SELECT name, value FROM setting').raw().all() as [string, number][];
  const settings = new Map(found);
  const price = (name: string): number | null => {
    const value = settings.get(name) ?? null;
    return value !== null && Number.isInteger(value) && value >= 0 && value <= 1e12 ? value : null;
  };
  const [milk, shop] = [price(PRICE_SETTINGS.milk), price(PRICE_SETTINGS.shop)];
  const ml = settings.get(PRICE_SETTINGS.shopMl) ?? 0;
  return {
    milk: milk === null ? null : { minor: milk, currency: of.preferences.currency },
    shop: shop === null || !(ml > 0) ? null : { minor: shop, ml },
  };
}

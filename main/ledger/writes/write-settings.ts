// The keeper's own figures that belong to no record, each kept under its name.
import type { Parsed, Reply } from '../../../core/contract';
import { LIMIT_NAMES, LIMIT_SETTINGS } from '../../../core/shelf/limits';
import { AWAKE_SETTINGS, minuteOf } from '../derived/own-hours';
import { PRICE_SETTINGS } from '../derived/own-prices';
import type { OpenAct } from '../facts/open-act';
import type { Ledger } from '../ledger';
import { tidy } from '../tidy-typed';

/** By name: a figure, null to forget it, undefined to leave it. */
type Figures = readonly (readonly [name: string, value: number | null | undefined])[];

function keep({ rows }: Ledger, act: OpenAct, figures: Figures): void {
  const kept = new Map([...rows.all('setting')].map((row) => [row.name, row]));
  for (const [name, value] of figures) {
    const old = kept.get(name);
    if (value === undefined || value === (old?.value ?? null)) continue;
    if (value === null) {
      if (old) act.remove('setting', old.key);
    } else if (old) act.update('setting', old.key, { value });
    else act.insert('setting', { name, value });
  }
}

/** The keeper's own days. @throws Refused 'nothing changed' */
export function changeLimits(ledger: Ledger, { limits, why }: Parsed<'shelf.limits'>): Reply<'shelf.limits'> {
  const figures = LIMIT_NAMES.map((name) => [LIMIT_SETTINGS[name], limits[name]] as const);
  const { act } = ledger.acts.mustRun('shelf.limits', 'how long things keep', tidy(why), (open) =>
    keep(ledger, open, figures),
  );
  return { act: act.uid };
}

/** Prices that belong to no package. @throws Refused 'nothing changed' */
export function savePrices(
  ledger: Ledger,
  { prices: { milkPerLitre, shop }, why }: Parsed<'cost.prices'>,
): Reply<'cost.prices'> {
  const figures: Figures = [
    [PRICE_SETTINGS.milk, milkPerLitre],
    [PRICE_SETTINGS.shop, shop === null ? null : shop?.minor],
    [PRICE_SETTINGS.shopMl, shop === null ? null : shop?.ml],
  ];
  const { act } = ledger.acts.mustRun('cost.prices', 'prices', tidy(why), (open) =>
    keep(ledger, open, figures),
  );
  return { act: act.uid };
}

/** When the keeper is awake. @throws Refused 'nothing changed' */
export function saveAwake(ledger: Ledger, { from, to, why }: Parsed<'plan.awake'>): Reply<'plan.awake'> {
  const figures: Figures = [
    [AWAKE_SETTINGS.from, minuteOf(from)],
    [AWAKE_SETTINGS.to, minuteOf(to)],
  ];
  const { act } = ledger.acts.mustRun('plan.awake', 'hours', tidy(why), (open) =>
    keep(ledger, open, figures),
  );
  return { act: act.uid };
}

// Costs, small and calm: one sentence, one drawing of a cup beside the shop's, each figure with where it comes from, and fields
// for the prices that are missing.
import { useState } from 'react';
import type { Input, Reply } from '../../core/contract';
import { minorDigits } from '../../core/quantities/quantities';
import { TextField } from '../parts/fields';
import { useReader } from '../parts/use-reader';
import { call } from '../state/ledger-calls';
import { go, say, sentenceCase } from '../state/store';
import { useRead } from '../state/use-read';
import { MissingPrices } from './missing-prices';
import './costs.css';

type Sheet = Reply<'cost.sheet'>;

/** A cup of one's own beside one from the shop. What is not known has an open outline, never a bar of nothing. */
function Bars({ bars }: Pick<Sheet, 'bars'>) {
  const most = Math.max(1, ...bars.map(({ minor }) => minor ?? 0));
  return (
    <section>
      <h2>A cup</h2>
      <ul className="cost-bars" aria-label="A cup">
        {bars.map(({ name, minor, says }) => (
          <li key={name}>
            <span>{name}</span>
            <span className="cost-track" aria-hidden="true">
              <span
                className={minor === null ? 'cost-bar open' : 'cost-bar'}
                style={{ width: minor === null ? '100%' : `${Math.max(1, (100 * minor) / most)}%` }}
              />
            </span>
            <strong className={minor === null ? 'soft' : ''}>{says}</strong>
          </li>
        ))}
      </ul>
    </section>
  );
}

async function save(prices: Input<'cost.prices'>['prices']): Promise<void> {
  const answer = await call('cost.prices', { prices });
  if (answer.ok) say('Noted.');
  else if (answer.error.code !== 'nothing changed') say(answer.sentence, 'caution');
}

/** Kept once a field is left: half a price is none. */
function OwnPrices({ sheet }: { readonly sheet: Sheet }) {
  const { reader, writer } = useReader();
  const digits = minorDigits(sheet.currency);
  const print = (minor: number | null): string =>
    minor === null ? '' : (minor / 10 ** digits).toFixed(digits);
  const [milk, setMilk] = useState(print(sheet.milkPerLitre));
  const [shop, setShop] = useState(print(sheet.shop?.minor ?? null));
  const [size, setSize] = useState(
    sheet.shop === null ? '' : writer.amount({ value: sheet.shop.ml, unit: 'mL', typed: null }),
  );
  const [readMilk, readShop, readSize] = [reader.price(milk), reader.price(shop), reader.amount(size, 'volume')];
  const keepMilk = (): void => {
    if (readMilk.ok && (readMilk.value?.minor ?? null) !== sheet.milkPerLitre)
      void save({ milkPerLitre: readMilk.value?.minor ?? null });
  };
  const keepShop = (): void => {
    if (!readShop.ok || !readSize.ok) return;
    const ml = readSize.value?.unit === 'mL' ? readSize.value.value : null;
    if (readShop.value !== null && ml !== null && ml > 0)
      void save({ shop: { minor: readShop.value.minor, ml } });
    else if (readShop.value === null && sheet.shop !== null) void save({ shop: null });
  };
  return (
    <section className="cost-prices" aria-label="Prices">
      <h2>Prices</h2>
      <div className="fields">
        <TextField
          label="A litre of milk"
          value={milk}
          read={readMilk}
          numeric
          hint="For milk from no noted carton"
          onChange={setMilk}
          onLeave={keepMilk}
        />
        <TextField
          label="In the shop it costs"
          value={shop}
          read={readShop}
          numeric
          hint="What you would buy instead"
          onChange={setShop}
          onLeave={keepShop}
        />
        <TextField
          label="For how much"
          value={size}
          read={readSize}
          placeholder="500 mL"
          onChange={setSize}
          onLeave={keepShop}
        />
      </div>
      <MissingPrices missing={sheet.missing} />
    </section>
  );
} // prettier-ignore

function Figures({ title, figures }: { readonly title: string; readonly figures: Sheet['additions'] }) {
  if (figures.length === 0) return null;
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <dl className="cost-figures">
        {figures.map(({ name, minor, says, from }) => (
          <div key={name}>
            <dt>{sentenceCase(name)}</dt>
            <dd className={minor === null ? 'soft' : 'figure'}>{says}</dd>
            <dd className="soft small">{from}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** The screen. */
export function CostsScreen() {
  const answer = useRead('cost.sheet', {});
  if (answer === null) return <div className="page costs" aria-busy="true" />;
  if (!answer.ok) return <p className="page notice caution">{answer.sentence}</p>;
  const sheet = answer.value;
  return (
    <div className="page costs stack">
      <header className="costs-head">
        <h1>Costs</h1>
        <button type="button" className="button quiet lit" onClick={() => go('sources')}>
          Sources
        </button>
      </header>
      <p>
        <strong>{sheet.sentence}</strong> <span className="soft">{sheet.reason}</span>
      </p>
      <Bars bars={sheet.bars} />
      <OwnPrices sheet={sheet} />
      <Figures title="Yours" figures={sheet.figures} />
      <Figures title="Stirred into a jar" figures={sheet.additions} />
      <p className="soft small">
        All in {sheet.currency}. {sheet.notCounted}
      </p>
    </div>
  );
}

// Packages that can't be counted yet, each with the fields that are missing: typed here, they are the package's own.
import { useState } from 'react';
import type { Reply } from '../../core/contract';
import type { Package } from '../../core/ledger/records';
import { TextField } from '../parts/fields';
import { useReader } from '../parts/use-reader';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';

function OnePackage({ found, says }: { readonly found: Package; readonly says: string }) {
  const { reader } = useReader();
  const [price, setPrice] = useState('');
  const [size, setSize] = useState('');
  const [readPrice, readSize] = [reader.price(price), reader.amount(size)];
  const keep = async (): Promise<void> => {
    if (!readPrice.ok || !readSize.ok) return;
    const { id, of, source, name, boughtOn, openedOn, bestBefore, note } = found;
    const answer = await call('package.save', {
      package: {
        id, of, source, name, boughtOn, openedOn, bestBefore, note,
        price: found.price ?? readPrice.value,
        size: found.size ?? readSize.value,
      },
    }); // prettier-ignore
    say(answer.ok ? `${name}: noted.` : answer.sentence, answer.ok ? 'calm' : 'caution');
  };
  return (
    <li>
      <p>
        <strong>{found.name}</strong> <span className="soft">{says}</span>
      </p>
      <div className="row">
        {found.price === null && (
          <TextField
            label={`Price of ${found.name}`}
            width="short"
            value={price}
            read={readPrice}
            onChange={setPrice}
          />
        )}
        {found.size === null && (
          <TextField
            label={`Size of ${found.name}`}
            width="short"
            value={size}
            read={readSize}
            placeholder="500 g, 1 L"
            onChange={setSize}
          />
        )}
        <button
          type="button"
          className="button"
          disabled={price.trim() === '' && size.trim() === ''}
          onClick={() => void keep()}
        >
          Note it
        </button>
      </div>
    </li>
  );
}

export function MissingPrices({ missing }: { readonly missing: Reply<'cost.sheet'>['missing'] }) {
  const answer = useRead('package.list', missing.length > 0 ? {} : null);
  if (missing.length === 0 || !answer?.ok) return null;
  return (
    <ul className="cost-missing" aria-label="Packages without price or size">
      {missing.flatMap((one) => {
        const found = answer.value.packages.find(({ id }) => id === one.package);
        if (!found) return [];
        const { left: _left, uses: _uses, ...record } = found;
        return [<OnePackage key={one.package} found={record} says={one.says} />];
      })}
    </ul>
  );
}

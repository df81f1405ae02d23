// What is stirred in and the milk: bags filled as far as they are, the newest of each; milk as one line each.
import { useAppState } from '../state/store';
import { useReader } from '../parts/use-reader';
import type { Forms } from './source-forms';
import { PackageForm } from './package-form';
import { dayWords, leftWords, priceWords, type Bought } from './package-words';
import { PackageActions } from './packet';
import { Bag } from './pieces';

interface Props {
  readonly packages: readonly Bought[];
  readonly forms: Forms;
}

const isEdited = (one: Bought, { editing }: Forms): boolean =>
  editing?.kind === 'package' && editing.id === one.id;

function EditForm({ one, forms }: { readonly one: Bought; readonly forms: Forms }) {
  return (
    <li className="packet-form">
      <PackageForm found={one} of={one.of} name={one.name} sources={forms.sources} onDone={forms.onDone} />
    </li>
  );
}

/** Why nobody can tell what is left. */
const unknownWords = ({ size, uses }: Bought): string =>
  size?.unit === 'g' && uses > 0
    ? 'Spoonfuls of it were not weighed, so what is left is not known.'
    : 'what is left is not known';

/** Bags of what is stirred in. */
export function StirredIn({ packages, forms }: Props) {
  const { writer } = useReader();
  const preferences = useAppState()?.preferences;
  if (packages.length === 0 || !preferences) return null;
  return (
    <section className="stack" aria-label="Stirred in">
      <h2>Stirred in</h2>
      <ul className="bags">
        {packages.map((one, at) =>
          isEdited(one, forms) ? (
            <EditForm key={one.id} one={one} forms={forms} />
          ) : (
            <li key={one.id} className="card bag-card">
              <Bag
                full={one.size === null || one.left === null ? null : one.left / one.size.value}
                grain={at}
              />
              <div className="bag-said">
                <h3>{one.name}</h3>
                <p>{leftWords(one, preferences) ?? <span className="soft">{unknownWords(one)}</span>}</p>
                <p className="soft small">
                  {dayWords(one, (day) => writer.day(day))} · {priceWords(one)}
                </p>
                <PackageActions one={one} forms={forms} />
              </div>
            </li>
          ),
        )}
      </ul>
    </section>
  );
}

const FEW = 4;

/** Milk: the cartons bought last, the others folded. */
export function Milk({ packages, forms }: Props) {
  const { writer } = useReader();
  if (packages.length === 0) return null;
  const row = (one: Bought) =>
    isEdited(one, forms) ? (
      <EditForm key={one.id} one={one} forms={forms} />
    ) : (
      <li key={one.id} className="package-row">
        <span>{one.name}</span>
        <span className="soft">
          {dayWords(one, (day) => writer.day(day))} · {priceWords(one)}
        </span>
        <PackageActions one={one} forms={forms} />
      </li>
    );
  const editedAt = packages.findIndex((one) => isEdited(one, forms));
  return (
    <section className="stack" aria-label="Milk">
      <h2>Milk</h2>
      <ul className="packages">{packages.slice(0, FEW).map(row)}</ul>
      {packages.length > FEW && (
        <details open={editedAt >= FEW}>
          <summary>Earlier cartons: {packages.length - FEW}</summary>
          <ul className="packages">{packages.slice(FEW).map(row)}</ul>
        </details>
      )}
    </section>
  );
}

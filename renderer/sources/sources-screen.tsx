// Sources: what lines can be started from, and the packages bought.
import { useEffect, useState } from 'react';
import { printAmount, printPrice } from '../../core/quantities';
import type { Package, Source, Strain } from '../../core/ledger/records';
import { call } from '../app/calls';
import { go, say, useAppState } from '../app/store';
import { useRead } from '../app/use-read';
import { useReader } from '../parts/use-reader';
import { PackageForm } from './package-form';
import { SourceForm } from './source-form';
import { pricePerUnit } from './source-text';
import './sources.css';

type Editing =
  | { readonly kind: 'source'; readonly id: string | null }
  | { readonly kind: 'package'; readonly id: string | null; readonly of: string; readonly name: string };

const strainWords = (strain: Strain): string =>
  [strain.genus, strain.species, strain.designation].filter((word) => word !== '').join(' ');
const count = (value: number): string =>
  value >= 1e9 ? `${value / 1e9} billion` : value >= 1e6 ? `${value / 1e6} million` : String(value);

interface Forms {
  readonly editing: Editing | null;
  readonly onEdit: (editing: Editing) => void;
  readonly onDone: () => void;
  readonly sources: readonly Source[];
}

/** One package as a row: what it is, its size, its price, what a piece of it costs, its days. */
function PackageRow({ one, forms }: { readonly one: Package; readonly forms: Forms }) {
  const { writer } = useReader();
  const preferences = useAppState()?.preferences;
  const { editing, onEdit, onDone, sources } = forms;
  if (editing?.kind === 'package' && editing.id === one.id)
    return (
      <li className="package-form">
        <PackageForm
          found={one}
          of={one.source ?? one.of}
          name={one.name}
          sources={sources}
          onDone={onDone}
        />
      </li>
    );
  const size = one.size && preferences ? (one.size.typed ?? printAmount(one.size, preferences)) : null;
  const days = [
    one.boughtOn ? `bought ${writer.day(one.boughtOn)}` : null,
    one.openedOn ? `opened ${writer.day(one.openedOn)}` : 'not said when opened',
    one.bestBefore ? `best before ${writer.day(one.bestBefore)}` : null,
  ].filter(Boolean);
  return (
    <li className="package-row">
      <span className="package-what">
        {one.of === 'source' ? (size ?? 'A package') : [one.name, size].filter(Boolean).join(', ')}
      </span>
      <span className="package-price">
        {one.price ? printPrice(one.price) : <span className="soft">price not said</span>}
        {pricePerUnit(one) !== null && <span className="soft">{pricePerUnit(one)}</span>}
      </span>
      <span className="soft">
        {days.join(', ')}
        {one.note && `. ${one.note}`}
      </span>
      <span className="package-actions">
        <button
          type="button"
          className="button quiet"
          onClick={() => onEdit({ kind: 'package', id: one.id, of: one.source ?? one.of, name: one.name })}
        >
          Correct<span className="visually-hidden"> the package of {one.name}</span>
        </button>
        <button type="button" className="button quiet" onClick={() => go('history', `package:${one.id}`)}>
          History<span className="visually-hidden"> of the package of {one.name}</span>
        </button>
      </span>
    </li>
  );
}

function aboutSource(source: Source): string {
  const about =
    source.form === 'culture'
      ? [
          `received${source.receivedFrom ? ` from ${source.receivedFrom}` : ''}`,
          source.knownGenerations === null
            ? 'its past is unknown'
            : `${source.knownGenerations} ${source.knownGenerations === 1 ? 'generation' : 'generations'} known`,
        ]
      : [
          source.form ?? 'form not said',
          source.blendTotalPerPiece === null
            ? null
            : `${count(source.blendTotalPerPiece)} CFU in each piece, all strains together`,
          source.guaranteed === null
            ? null
            : source.guaranteed === 'expiry'
              ? 'counts guaranteed until expiry'
              : 'counts guaranteed at manufacture only',
        ];
  const words = about.filter(Boolean).join(', ');
  return `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}.`;
}

/** A source with its strains, and its packages under it. */
function SourceItem({
  source,
  packages,
  startedJars,
  forms,
}: {
  readonly source: Source;
  readonly packages: readonly Package[];
  readonly startedJars: number;
  readonly forms: Forms;
}) {
  const { editing, onEdit, onDone, sources } = forms;
  if (editing?.kind === 'source' && editing.id === source.id)
    return (
      <li className="source-item">
        <SourceForm source={source} onDone={onDone} />
      </li>
    );
  const adding = editing?.kind === 'package' && editing.id === null && editing.of === source.id;
  return (
    <li className="source-item">
      <header className="source-head">
        <h2>{source.name}</h2>
        <span className="soft">{startedJars === 1 ? 'started one jar' : `started ${startedJars} jars`}</span>
        <span className="source-actions">
          <button
            type="button"
            className="button quiet"
            onClick={() => onEdit({ kind: 'source', id: source.id })}
          >
            Correct the source<span className="visually-hidden"> {source.name}</span>
          </button>
          <button
            type="button"
            className="button quiet"
            onClick={() => onEdit({ kind: 'package', id: null, of: source.id, name: source.name })}
          >
            Add a package<span className="visually-hidden"> of {source.name}</span>
          </button>
          <button type="button" className="button quiet" onClick={() => go('history', `source:${source.id}`)}>
            History<span className="visually-hidden"> of {source.name}</span>
          </button>
        </span>
      </header>
      <p>{aboutSource(source)}</p>
      {source.strains.length > 0 ? (
        <div>
          <ul className="strains">
            {source.strains.map((strain, at) => (
              <li key={at}>
                <em>{strainWords(strain)}</em>
                {strain.countPerPiece !== null && (
                  <span className="soft">{count(strain.countPerPiece)} CFU in each piece</span>
                )}
              </li>
            ))}
          </ul>
          <p className="soft small">Strains as declared at the start, not tested since.</p>
        </div>
      ) : (
        <p className="soft">No strains noted yet.</p>
      )}
      {source.note && <p>{source.note}</p>}
      {packages.length > 0 && (
        <ul className="packages" aria-label={`Packages of ${source.name}`}>
          {packages.map((one) => (
            <PackageRow key={one.id} one={one} forms={forms} />
          ))}
        </ul>
      )}
      {adding && (
        <PackageForm found={null} of={source.id} name={source.name} sources={sources} onDone={onDone} />
      )}
    </li>
  );
}

/** The screen. */
export function SourcesScreen() {
  const sources = useRead('source.list', {});
  const packages = useRead('package.list', {});
  const [editing, setEditing] = useState<Editing | null>(null);
  useEffect(() => {
    // What was unfinished when the program stopped opens by itself on coming back to this screen.
    void call('draft.list', {}).then((answer) => {
      if (!answer.ok) {
        say(answer.sentence, 'caution');
        return;
      }
      const key = answer.value.drafts.map((draft) => draft.key).find((one) => /^(source|package):/.test(one));
      if (key === undefined) return;
      const [kind, id] = key.split(':') as ['source' | 'package', string];
      const record = id === 'new' ? null : id;
      setEditing(
        (now) =>
          now ?? (kind === 'source' ? { kind, id: record } : { kind, id: record, of: 'milk', name: '' }),
      );
    });
  }, []);
  if (sources === null || packages === null) return <div className="page" aria-busy="true" />;
  if (!sources.ok || !packages.ok)
    return (
      <p className="page notice caution">
        {!sources.ok ? sources.sentence : !packages.ok ? packages.sentence : ''}
      </p>
    );
  const all = sources.value.sources;
  const bought = packages.value.packages;
  // The last recorded first: milk is bought often, and the newest is the one in use.
  const others = bought.filter((one) => one.of !== 'source').toReversed();
  const done = (): void => setEditing(null);
  const forms: Forms = { editing, onEdit: setEditing, onDone: done, sources: all };
  return (
    <div className="page stack">
      <header className="stack">
        <h1>Sources</h1>
        <p className="soft">
          What a line can be started from: products with declared strains, and cultures received from someone.
        </p>
        {editing === null && (
          <div className="row">
            <button
              type="button"
              className="button primary"
              onClick={() => setEditing({ kind: 'source', id: null })}
            >
              New source
            </button>
            <button
              type="button"
              className="button"
              onClick={() => setEditing({ kind: 'package', id: null, of: 'milk', name: '' })}
            >
              New package
            </button>
          </div>
        )}
      </header>
      {editing?.kind === 'source' && editing.id === null && <SourceForm source={null} onDone={done} />}
      {editing?.kind === 'package' && editing.id === null && !all.some((one) => one.id === editing.of) && (
        <PackageForm found={null} of={editing.of} name={editing.name} sources={all} onDone={done} />
      )}
      {all.length === 0 && editing === null && (
        <p className="notice">
          No source yet. Add the product or culture that your first jars were started from.
        </p>
      )}
      <ul className="source-list" aria-label="Sources">
        {all.map((source) => (
          <SourceItem
            key={source.id}
            source={source}
            startedJars={source.startedJars}
            packages={bought.filter((one) => one.source === source.id)}
            forms={forms}
          />
        ))}
      </ul>
      {others.length > 0 && (
        <section className="stack" aria-label="Milk and additions">
          <h2>Milk and additions</h2>
          <ul className="packages named">
            {others.map((one) => (
              <PackageRow key={one.id} one={one} forms={forms} />
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

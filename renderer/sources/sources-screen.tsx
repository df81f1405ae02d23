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
import './sources.css';

type Editing =
  | { readonly kind: 'source'; readonly id: string | null }
  | { readonly kind: 'package'; readonly id: string | null; readonly of: string; readonly name: string };

const strainWords = (strain: Strain): string =>
  [strain.genus, strain.species, strain.designation].filter((word) => word !== '').join(' ');
const count = (value: number): string =>
  value >= 1e9 ? `${value / 1e9} billion` : value >= 1e6 ? `${value / 1e6} million` : String(value);

function PackageLine({ one, onCorrect }: { readonly one: Package; readonly onCorrect: () => void }) {
  const { writer } = useReader();
  const preferences = useAppState()?.preferences;
  const words = [
    one.size && preferences ? (one.size.typed ?? printAmount(one.size, preferences)) : null,
    one.price ? printPrice(one.price) : null,
    one.boughtOn ? `bought ${writer.day(one.boughtOn)}` : null,
    one.openedOn ? `opened ${writer.day(one.openedOn)}` : 'not said when opened',
    one.bestBefore ? `best before ${writer.day(one.bestBefore)}` : null,
    one.note,
  ].filter(Boolean);
  return (
    <li className="package-line">
      <span>
        {one.of !== 'source' && <strong>{one.name} </strong>}
        {words.join(', ')}
      </span>
      <span className="row">
        <button type="button" className="button quiet" onClick={onCorrect}>
          Correct<span className="visually-hidden"> the package of {one.name}</span>
        </button>
        <button type="button" className="button quiet" onClick={() => go('history', `package:${one.id}`)}>
          History<span className="visually-hidden"> of the package of {one.name}</span>
        </button>
      </span>
    </li>
  );
}

function SourceCard({
  source,
  packages,
  startedJars,
  onEdit,
}: {
  readonly source: Source;
  readonly packages: readonly Package[];
  readonly startedJars: number;
  readonly onEdit: (editing: Editing) => void;
}) {
  const culture = source.form === 'culture';
  const about = culture
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
            ? 'guaranteed until expiry'
            : 'guaranteed at manufacture only',
      ];
  return (
    <article className="source-card" aria-label={source.name}>
      <header className="jar-view-head">
        <h2>{source.name}</h2>
        <span className="soft">{startedJars === 1 ? 'started one jar' : `started ${startedJars} jars`}</span>
      </header>
      <p>{about.filter(Boolean).join(', ')}.</p>
      {source.strains.length > 0 ? (
        <>
          <ul className="strains">
            {source.strains.map((strain, at) => (
              <li key={at}>
                <em>{strainWords(strain)}</em>
                {strain.countPerPiece !== null && (
                  <span className="soft"> {count(strain.countPerPiece)} in each piece</span>
                )}
              </li>
            ))}
          </ul>
          <p className="soft small">Declared at the start, not tested since.</p>
        </>
      ) : (
        <p className="soft">No strains noted yet.</p>
      )}
      {source.note && <p>{source.note}</p>}
      {packages.length > 0 && (
        <ul className="packages">
          {packages.map((one) => (
            <PackageLine
              key={one.id}
              one={one}
              onCorrect={() => onEdit({ kind: 'package', id: one.id, of: source.id, name: source.name })}
            />
          ))}
        </ul>
      )}
      <div className="row">
        <button type="button" className="button" onClick={() => onEdit({ kind: 'source', id: source.id })}>
          Correct<span className="visually-hidden"> {source.name}</span>
        </button>
        <button
          type="button"
          className="button quiet"
          onClick={() => onEdit({ kind: 'package', id: null, of: source.id, name: source.name })}
        >
          Add a package<span className="visually-hidden"> of {source.name}</span>
        </button>
        <button type="button" className="button quiet" onClick={() => go('history', `source:${source.id}`)}>
          Its history
        </button>
      </div>
    </article>
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
  const others = bought.filter((one) => one.of !== 'source');
  const done = (): void => setEditing(null);
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
      {editing?.kind === 'source' && (
        <SourceForm
          key={editing.id}
          source={all.find((one) => one.id === editing.id) ?? null}
          onDone={done}
        />
      )}
      {editing?.kind === 'package' && (
        <PackageForm
          key={editing.id}
          found={bought.find((one) => one.id === editing.id) ?? null}
          of={editing.of}
          name={editing.name}
          sources={all}
          onDone={done}
        />
      )}
      {all.length === 0 && editing === null && (
        <p className="notice">
          No source yet. Add the product or culture that your first jars were started from.
        </p>
      )}
      <div className="source-cards">
        {all.map((source) => (
          <SourceCard
            key={source.id}
            source={source}
            startedJars={source.startedJars}
            packages={bought.filter((one) => one.source === source.id)}
            onEdit={setEditing}
          />
        ))}
      </div>
      {others.length > 0 && (
        <section className="stack" aria-label="Milk and additions">
          <h2>Milk and additions</h2>
          <ul className="packages">
            {others.map((one) => (
              <PackageLine
                key={one.id}
                one={one}
                onCorrect={() => setEditing({ kind: 'package', id: one.id, of: one.of, name: one.name })}
              />
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

// Sources and costs: what lines can be started from, as packets; what is stirred in, as bags; milk; what it all costs.
import { useEffect, useState } from 'react';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import { useRead } from '../state/use-read';
import type { Editing, Forms } from './source-forms';
import { CostsInShort } from './cost-list';
import { PackageForm } from './package-form';
import { Packet } from './packet';
import { SourceForm } from './source-form';
import { Milk, StirredIn } from './stirred-in';
import './sources.css';

/** The screen. */
export function SourcesScreen() {
  const sources = useRead('source.list', {});
  const packages = useRead('package.list', {});
  const costs = useRead('cost.list', {});
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
  // The last recorded first: what is bought often is in use as the newest.
  const others = bought.filter((one) => one.of !== 'source').toReversed();
  const done = (): void => setEditing(null);
  const forms: Forms = { editing, onEdit: setEditing, onDone: done, sources: all };
  return (
    <div className="page sources stack">
      <header className="sources-head">
        <h1>Sources and costs</h1>
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
      <CostsInShort costs={costs} />
      {editing?.kind === 'source' && editing.id === null && <SourceForm source={null} onDone={done} />}
      {editing?.kind === 'package' && editing.id === null && !all.some((one) => one.id === editing.of) && (
        <PackageForm found={null} of={editing.of} name={editing.name} sources={all} onDone={done} />
      )}
      {all.length === 0 && editing === null && (
        <p className="notice">
          No source yet. Add the product or culture that your first jars were started from.
        </p>
      )}
      <ul className="source-packets" aria-label="Sources">
        {all.map((source) => (
          <Packet
            key={source.id}
            source={source}
            boxes={bought.filter((one) => one.source === source.id)}
            forms={forms}
          />
        ))}
      </ul>
      {all.some(({ strains }) => strains.length > 0) && (
        <p className="soft small">Strains and counts are as declared at the start, not tested since.</p>
      )}
      <StirredIn packages={others.filter((one) => one.of === 'addition')} forms={forms} />
      <Milk packages={others.filter((one) => one.of !== 'addition')} forms={forms} />
    </div>
  );
}

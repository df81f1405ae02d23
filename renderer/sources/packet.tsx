// A source as a packet: its strains as cells, its pieces left, its days, the lines it started.
import type { Reply } from '../../core/contract';
import type { Strain } from '../../core/ledger/records';
import { go, sentenceCase, useAppState } from '../state/store';
import { JarPicture } from '../parts/jar-shape';
import { lookOf } from '../parts/jar-look';
import { numberWord } from '../parts/number-words';
import { useReader } from '../parts/use-reader';
import { PackageForm } from './package-form';
import type { Forms } from './source-forms';
import { dayWords, leftWords, priceWords, type Bought } from './package-words';
import { Pieces } from './pieces';
import { SourceForm } from './source-form';

export type SourceNow = Reply<'source.list'>['sources'][number];

const count = (value: number): string =>
  value >= 1e9 ? `${value / 1e9} billion` : value >= 1e6 ? `${value / 1e6} million` : String(value);
const pieceOf = (source: SourceNow): string =>
  source.form === 'capsules' ? 'capsule' : source.form === 'tablets' ? 'tablet' : source.form === 'sachets' ? 'sachet' : 'piece'; // prettier-ignore

function Strains({ source }: { readonly source: SourceNow }) {
  const whole = source.blendTotalPerPiece;
  const words = (strain: Strain): string =>
    strain.countPerPiece === null ? 'count not declared' : `${count(strain.countPerPiece)} a ${pieceOf(source)}`;
  if (source.form === 'culture')
    return (
      <>
        <svg className="wave" viewBox="0 0 344 24" aria-hidden="true">
          <path d="M2 12Q26 -10 50 12T98 12T146 12T194 12T242 12T290 12T338 12" />
        </svg>
        <p className="soft">
          Received{source.receivedFrom === null ? '' : ` from ${source.receivedFrom}`}.{' '}
          {source.knownGenerations === null
            ? 'Its past is unknown.'
            : `${sentenceCase(numberWord(source.knownGenerations))} generations of it are known.`}
        </p>
      </>
    );
  return (
    <>
      {source.strains.length === 0 && <p className="soft">Strains not noted.</p>}
      <ul className="strain-cells">
        {source.strains.map((strain, at) => (
          <li key={at}>
            <span className="strain-cell" aria-hidden="true" />
            <span>
              <em>{[strain.genus, strain.species].filter(Boolean).join(' ')}</em> {strain.designation}
              <span className="soft small">{words(strain)}</span>
            </span>
          </li>
        ))}
      </ul>
      {whole !== null && (
        <p className="soft small">
          {count(whole)} a {pieceOf(source)}, all strains together
        </p>
      )}
      {source.guaranteed !== null && (
        <p className="soft small">
          {source.guaranteed === 'expiry' ? 'Counts guaranteed until expiry.' : 'Counts guaranteed at manufacture only.'}
        </p>
      )}
    </>
  );
} // prettier-ignore

/** One bought box of it. */
function Box({ one, forms }: { readonly one: Bought; readonly forms: Forms }) {
  const { writer } = useReader();
  const preferences = useAppState()?.preferences;
  const left = preferences ? leftWords(one, preferences) : null;
  return (
    <li className="box">
      <p>
        <strong>{left ?? one.size?.typed ?? 'A package'}</strong>
        {left === null && <span className="soft"> · what is left is not known</span>}
      </p>
      {one.size?.unit === 'pieces' && one.left !== null && <Pieces left={one.left} of={one.size.value} />}
      <p className="soft small">
        {sentenceCase(dayWords(one, (day) => writer.day(day)))} · {priceWords(one)}
        {one.note && `. ${one.note}`}
      </p>
      <PackageActions one={one} forms={forms} />
    </li>
  );
}

/** Correct, and its history. */
export function PackageActions({ one, forms }: { readonly one: Bought; readonly forms: Forms }) {
  return (
    <span className="source-actions">
      <button
        type="button"
        className="button quiet"
        onClick={() =>
          forms.onEdit({ kind: 'package', id: one.id, of: one.source ?? one.of, name: one.name })
        }
      >
        Correct<span className="visually-hidden"> the package of {one.name}</span>
      </button>
      <button type="button" className="button quiet" onClick={() => go('history', `package:${one.id}`)}>
        History<span className="visually-hidden"> of the package of {one.name}</span>
      </button>
    </span>
  );
}

/** What was started from it, and starting another. */
function Foot({ source }: { readonly source: SourceNow }) {
  const { lines, startedJars } = source;
  const last = lines.at(-1);
  return (
    <footer className="packet-foot">
      {startedJars > 0 && (
        <JarPicture
          generation={source.form === 'culture' ? 2 : 1}
          {...lookOf({ setWord: 'spoonable', spoiled: false, caution: null }, source.form === 'culture')}
        />
      )}
      <p>
        {startedJars === 0 ? (
          <span className="soft">not used yet</span>
        ) : lines.length === 0 ? (
          `Went into ${startedJars === 1 ? 'one jar' : `${numberWord(startedJars)} jars`}`
        ) : (
          <>
            Started{' '}
            {lines.map(({ id, name }, at) => (
              <span key={id}>
                {at > 0 && (at === lines.length - 1 ? ' and ' : ', ')}
                <button type="button" className="linked" onClick={() => go('vigour', `line:${id}`)}>
                  {name}
                </button>
              </span>
            ))}
          </>
        )}
      </p>
      <button type="button" className="button" onClick={() => go('batch', last ? `repeat:${last.id}` : 'new')}>
        Start a line<span className="visually-hidden"> from {source.name}</span>
      </button>
    </footer>
  );
} // prettier-ignore

/** The packet, or the form in its place. */
export function Packet({ source, boxes, forms }: { readonly source: SourceNow; readonly boxes: readonly Bought[]; readonly forms: Forms }) {
  const { editing, onEdit, onDone, sources } = forms;
  const box = editing?.kind === 'package' ? boxes.find(({ id }) => id === editing.id) : undefined;
  if (editing?.kind === 'source' && editing.id === source.id)
    return (
      <li className="packet-form">
        <SourceForm source={source} onDone={onDone} />
      </li>
    );
  if (box || (editing?.kind === 'package' && editing.id === null && editing.of === source.id))
    return (
      <li className="packet-form">
        <PackageForm found={box ?? null} of={source.id} name={box?.name ?? source.name} sources={sources} onDone={onDone} />
      </li>
    );
  return (
    <li className="source-packet">
      <div className="packet-body">
        <header className="packet-head">
          <h2>{source.name}</h2>
          <span className="soft">{source.form === 'culture' ? 'received' : (source.form ?? 'form not noted')}</span>
        </header>
        <Strains source={source} />
        {source.note && <p className="soft small">{source.note}</p>}
        {boxes.length > 0 && (
          <ul className="boxes" aria-label={`Packages of ${source.name}`}>
            {boxes.map((one) => (
              <Box key={one.id} one={one} forms={forms} />
            ))}
          </ul>
        )}
        <span className="source-actions packet-actions">
          <button type="button" className="button quiet" onClick={() => onEdit({ kind: 'source', id: source.id })}>
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
      </div>
      <Foot source={source} />
    </li>
  );
} // prettier-ignore

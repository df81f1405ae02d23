// One jar of a recorded batch as a column: drawn as it set, what seeded it, what went in, what was seen, its photographs,
// and what can still be done with it. Its rows stand level with those of the jars beside it.
import { isSeenOut } from '../../core/ledger/seen-out';
import { useRef, useState } from 'react';
import { discardWord } from '../../core/says/safety-says';
import type { MatesPowerCut } from '../../core/shapes/seed-codes';
import { portionName } from '../../core/ledger/portions';
import type { Hold, Portion } from '../../core/ledger/records';
import { type Caution, Cautions } from '../parts/caution-list';
import { JarPicture } from '../parts/jar-shape';
import { lookOf } from '../parts/jar-look';
import { Remarks } from '../parts/unanswered';
import { useReader } from '../parts/use-reader';
import { go } from '../state/store';
import { CorrectJar } from './batch-corrections';
import type { Row } from './batch-list';
import { CorrectAdditions, CorrectSeeds, OutcomeOf } from './jar-corrections';
import { isSetAside } from './is-set-aside';
import { additionWords, keptWords, milkWords, seedWords } from './jar-says';
import { isUnseen, JarSeen } from './jar-seen';
import { MistakeQuestion } from './mistake-question';
import { PlannedJar } from './planned-jar';
import { Photographs } from './photographs';
import type { Jar } from './record-text';
import { ReserveForm } from './reserve-form';
import { GoneButton } from '../parts/gone-button';

const EDITORS = ['outcome', 'jar', 'seeds', 'additions', 'reserve'] as const;
type Editor = (typeof EDITORS)[number];

/** What all jars beside it share, said once at the left; null where they differ. */
export interface Once {
  readonly seeds: string | null;
  readonly additions: string | null;
  readonly milk: string | null;
  readonly unseen: string | null;
  /** What is said above of several of them. */
  readonly above: ReadonlySet<string>;
  /** Cautions of several of them, said above too. */
  readonly cautions: ReadonlySet<string>;
}

/** What tells one caution's words from another's. */
export const inWords = (caution: Caution): string => JSON.stringify(caution);

interface Props {
  readonly record: Jar;
  readonly once: Once;
  /** How the list draws it; absent while that is read. */
  readonly drawn: Row['jars'][number] | undefined;
  readonly holds: readonly Hold[];
  readonly lastMadeOn: string;
  /** A power cut that other jars of its hold tell of. */
  readonly mates: MatesPowerCut | null;
  /** It stands in a hold that runs. */
  readonly warm: boolean;
  readonly eats: string | null;
  /** Draft keys that hold something unfinished: such a form opens by itself. */
  readonly unfinished: ReadonlySet<string>;
}

const STATES: Partial<Record<Jar['jar']['state'], string>> = {
  planned: 'planned, not counted',
  'not made': 'planned, but not made',
  lost: 'a jar nobody can name',
};

/** Its letter, its picture and where it stands. */
function Head({
  record,
  drawn,
  warm,
  heading,
}: Pick<Props, 'record' | 'drawn' | 'warm'> & {
  readonly heading: React.RefObject<HTMLHeadingElement | null>;
}) {
  const { jar, label, discard } = record;
  const place = warm ? 'in warmth' : jar.onShelf === null ? null : jar.onShelf ? 'on the shelf' : 'gone';
  return (
    <header className="jar-column-head">
      {jar.state === 'planned' || jar.state === 'not made' ? (
        <PlannedJar plain={record.additions.length === 0} />
      ) : (
        <JarPicture
          generation={drawn?.generation ?? 1}
          {...lookOf(
            {
              setWord: record.outcome?.setWord ?? null,
              spoiled: discard !== null,
              caution: record.caution,
              outcomeKnown: isSeenOut(record.outcome),
              onShelf: jar.onShelf,
            },
            drawn?.atLeast,
          )}
        />
      )}
      <div>
        <h2 ref={heading} tabIndex={-1}>
          <span className="visually-hidden">{label.slice(0, label.length - jar.letter.length)}</span>
          {jar.letter}
        </h2>
        {discard !== null && <span className="jar-stand">{discardWord(discard)}</span>}
        {discard === null && isSetAside(record) && <span className="jar-stand">Set aside</span>}
        {discard === null && record.caution === 'look' && <span className="soft small">look first</span>}
        {jar.state !== 'made' && <span className="soft">{STATES[jar.state]}</span>}
        {jar.state === 'made' && place !== null && <span className="soft small">{place}</span>}
      </div>
    </header>
  );
}

/** What is rarely done, a press away. */
function More({
  record,
  onChoose,
  onKeep,
  onMistake,
}: {
  readonly record: Jar;
  readonly onChoose: (editor: Editor) => void;
  readonly onKeep: (portion: Portion | null) => void;
  readonly onMistake: () => void;
}) {
  const { jar, label } = record;
  const quiet = (says: string, act: () => void) => (
    <button type="button" className="button quiet" onClick={act}>
      {says}
    </button>
  );
  return (
    <details className="more">
      <summary>
        More<span className="visually-hidden"> of {label}</span>
      </summary>
      <div className="jar-actions">
        {jar.state === 'made' &&
          quiet(record.outcome ? 'Correct outcome' : 'Record outcome', () => onChoose('outcome'))}
        {isUnseen(record) && quiet('Keep some back', () => onKeep(null))}
        {quiet('What seeded it', () => onChoose('seeds'))}
        {quiet('What was stirred in', () => onChoose('additions'))}
        {quiet('Letter, hold, note', () => onChoose('jar'))}
        {record.portions.map((one) => (
          <span key={one.id}>{quiet(`What was kept back, ${portionName(one)}`, () => onKeep(one))}</span>
        ))}
        {quiet('Its history', () => go('history', `jar:${jar.id}`))}
        {quiet('Entered by mistake', onMistake)}
      </div>
    </details>
  );
}

/** The form that is open in the column, if any; it takes the width of the page. */
function Editing({
  editor,
  record,
  portion,
  holds,
  lastMadeOn,
  mates,
  onDone,
}: Pick<Props, 'record' | 'holds' | 'lastMadeOn' | 'mates'> & {
  readonly editor: Editor;
  readonly portion: Portion | null;
  readonly onDone: () => void;
}) {
  switch (editor) {
    case 'outcome':
      return <OutcomeOf record={record} mates={mates} onDone={onDone} />;
    case 'jar':
      return <CorrectJar record={record} holds={holds} onDone={onDone} />;
    case 'seeds':
      return <CorrectSeeds record={record} lastMadeOn={lastMadeOn} onDone={onDone} />;
    case 'additions':
      return <CorrectAdditions record={record} onDone={onDone} />;
    case 'reserve':
      return <ReserveForm record={record} portion={portion} onDone={onDone} />;
  }
}

/** What it is made of, row by row as beside the other jars; the labels stand at the left. */
function Made({ record, once }: Pick<Props, 'record' | 'once'>) {
  const { writer } = useReader();
  const { jar } = record;
  const kept = keptWords(record, writer);
  const words = (says: string, shared: string | null) => (
    <p className={shared === null ? (says === '' ? 'soft' : undefined) : 'visually-hidden'}>
      {says === '' ? 'not noted' : says}
    </p>
  );
  return (
    <>
      <div className="jar-cell">{words(seedWords(record, writer), once.seeds)}</div>
      <div className="jar-cell">{words(additionWords(record, writer), once.additions)}</div>
      <div className="jar-cell">
        {words(milkWords(record, writer), once.milk)}
        {kept !== '' && <p>Kept back: {kept}</p>}
        {jar.note && <p className="note-lines">{jar.note}</p>}
      </div>
    </>
  );
}

/** The jar. */
export function JarColumn(props: Props) {
  const { record, holds, lastMadeOn, mates, warm, eats, unfinished } = props;
  const { jar, label } = record;
  const [chosen, setChosen] = useState<Editor | null | undefined>(undefined);
  const [mistake, setMistake] = useState(false);
  const [portion, setPortion] = useState<Portion | null>(
    () => record.portions.find((one) => unfinished.has(`reserve:${one.id}`)) ?? null,
  );
  const begun = EDITORS.find((one) => unfinished.has(`${one}:${jar.id}`)) ?? (portion ? 'reserve' : null);
  const editor = chosen === undefined ? begun : chosen;
  const heading = useRef<HTMLHeadingElement>(null);
  const spoiled = record.discard !== null;
  const done = (): void => {
    setChosen(null);
    heading.current?.focus();
  };
  const keep = (kept: Portion | null): void => {
    setPortion(kept);
    setChosen('reserve');
  };
  const own = record.cautions.filter((one) => one.of !== jar.id && !props.once.cautions.has(inWords(one)));
  const stands = spoiled ? ' spoiled' : isSetAside(record) ? ' set-aside' : '';
  return (
    <section className={`jar-column${stands}`} aria-label={label}>
      <Head record={record} drawn={props.drawn} warm={warm} heading={heading} />
      <Made record={record} once={props.once} />
      <div className="jar-cell">
        {/* That it is spoiled itself is said with what was seen. */}
        <Cautions jar={jar.id} cautions={own} />
        <JarSeen
          record={record}
          mates={mates}
          eats={eats}
          once={props.once.unseen !== null}
          above={props.once.above}
        />
        <Remarks remarks={record.remarks.filter(({ readAs }) => readAs === null)} />
      </div>
      {jar.state === 'planned' || jar.state === 'not made' ? (
        <div className="jar-cell" />
      ) : (
        <Photographs
          jar={jar.id}
          batch={jar.batch}
          label={label}
          photographs={record.photographs}
          unfinished={unfinished}
        />
      )}
      <div className="jar-cell jar-actions">
        {editor === null && (
          <>
            {jar.state === 'made' && !spoiled && record.outcome !== null && (
              <button type="button" className="button quiet" onClick={() => keep(null)}>
                Keep some back<span className="visually-hidden"> of {label}</span>
              </button>
            )}
            {jar.state === 'made' && <GoneButton jar={jar.id} label={label} onShelf={jar.onShelf} />}
            <More record={record} onChoose={setChosen} onKeep={keep} onMistake={() => setMistake(true)} />
          </>
        )}
      </div>
      {editor !== null && (
        <Editing {...{ editor, record, portion, holds, lastMadeOn, mates }} onDone={done} />
      )}
      {mistake && (
        <MistakeQuestion jar={jar.id} label={label} spoiled={spoiled} onDone={() => setMistake(false)} />
      )}
    </section>
  );
}

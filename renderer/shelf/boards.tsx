// The boards of the shelf: fridge, freezer, the tub of what is in warmth, and what is no food apart under words. One stop of the
// keyboard for all of them; the arrows walk.
import { useRef, type KeyboardEvent } from 'react';
import { JarDefs } from '../parts/jar-shape';
import { inWalkingOrder, type Board, type Thing } from './things';
import { ThingPicture } from './thing-picture';

interface Props {
  readonly boards: readonly Board[];
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
  /** Enter: to what can be done with it. */
  readonly onEnter: () => void;
}

/** What a screen reader hears after what all can see. */
const alsoSpoken = ({ says, lastOf }: Thing): string =>
  [lastOf.length > 0 ? 'the last of its line' : null, says.caution]
    .flatMap((part) => (part === null ? [] : `, ${part}`))
    .join('');

const Comma = () => <span className="visually-hidden">, </span>;

interface StandProps {
  readonly thing: Thing;
  readonly chosen: boolean;
  readonly onChoose: () => void;
  readonly onKey: (event: KeyboardEvent) => void;
}

function Stand({ thing, chosen, onChoose, onKey }: StandProps) {
  const seed = thing.nextSeedOf.length > 0;
  return (
    <li className={`shelf-stand ${thing.form}${seed ? ' next' : ''}`}>
      <button
        type="button"
        className="shelf-thing"
        data-thing={thing.id}
        tabIndex={chosen ? 0 : -1}
        aria-pressed={chosen}
        onClick={onChoose}
        onKeyDown={onKey}
      >
        <span className="shelf-drawn">
          <ThingPicture thing={thing} />
        </span>
        <span className="shelf-plank" aria-hidden="true" />
        <span className="shelf-name">{thing.name}</span>
        <span className="shelf-left">
          <Comma />
          {thing.left.says}
        </span>
        <span className="shelf-below">
          <Comma />
          {thing.says.below}
          <span className="visually-hidden">{alsoSpoken(thing)}</span>
        </span>
      </button>
    </li>
  );
}

const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1 };

export function Boards({ boards, chosen, onChoose, onEnter }: Props) {
  const root = useRef<HTMLDivElement>(null);
  const all = inWalkingOrder(boards);
  const walk = (event: KeyboardEvent): void => {
    const at = all.findIndex(({ id }) => id === chosen);
    const step = STEPS[event.key];
    const to =
      step !== undefined
        ? Math.min(all.length - 1, Math.max(0, at + step))
        : event.key === 'Home'
          ? 0
          : event.key === 'End'
            ? all.length - 1
            : null;
    const thing = to === null ? undefined : all[to];
    if (event.key === 'Enter' && at >= 0) {
      event.preventDefault();
      onEnter();
    }
    if (!thing) return;
    event.preventDefault();
    onChoose(thing.id);
    root.current?.querySelector<HTMLElement>(`[data-thing="${thing.id}"]`)?.focus();
  };
  return (
    <div className="shelf-boards" ref={root}>
      <svg width="0" height="0" className="jar shelf-defs" aria-hidden="true">
        <JarDefs />
      </svg>
      {boards.map(({ title, kind, things }) => (
        <section key={title} className={`shelf-board ${kind}`} aria-label={title}>
          <h2>{title}</h2>
          <ul>
            {things.map((thing) => (
              <Stand
                key={thing.id}
                thing={thing}
                chosen={thing.id === chosen}
                onChoose={() => onChoose(thing.id)}
                onKey={walk}
              />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

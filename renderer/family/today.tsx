// The place of today, at the right of the strip: what is due, else quietly what is in warmth; nothing while nothing is.
import { go } from '../state/store';
import type { Now } from '../parts/use-now';

export function Today({ holds }: Pick<Now, 'holds'>) {
  const [first, ...others] = holds;
  if (!first) return null;
  const { look, batch, label } = first;
  const more =
    others.length === 0
      ? ''
      : ` ${others.length === 1 ? 'Another hold runs' : `${others.length} other holds run`} too.`;
  return (
    <section className={look.due ? 'today due' : 'today'} aria-label="Today">
      <div>
        <p className="today-title">{first.title}</p>
        <p className="soft">
          {first.rest}
          {more}
        </p>
      </div>
      <button className="button" type="button" onClick={() => go('batch', batch)}>
        {look.due ? (look.what === 'early look' ? 'Look now' : 'Take out') : 'Show'}
        <span className="visually-hidden">: {label}</span>
      </button>
    </section>
  );
}

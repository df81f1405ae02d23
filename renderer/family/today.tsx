// The place of today, at the right of the strip: the one thing that asks for something first; the rest behind one press.
import { useState } from 'react';
import { goToItem, todayAct } from '../parts/today-item';
import { useToday } from '../parts/use-now';
import { TodayList } from './today-list';

export function Today() {
  const { items } = useToday();
  const [open, setOpen] = useState(false);
  const [first, ...others] = items;
  if (!first) return null;
  // What can wait takes no room from the verdict.
  if (!first.due && first.of.kind !== 'hold')
    return (
      <section className="today" aria-label="Today">
        <button className="button quiet" type="button" onClick={() => setOpen(true)}>
          {items.length === 1 ? 'A reminder' : `${items.length} reminders`}
        </button>
        {open && <TodayList items={items} onClose={() => setOpen(false)} />}
      </section>
    );
  const act = todayAct(first);
  return (
    <section className={first.due ? 'today due' : 'today'} aria-label="Today">
      <div>
        <p className="today-title">{first.title}</p>
        <p className="soft">
          {first.rest}
          {others.length > 0 && (
            <button className="linked today-more" type="button" onClick={() => setOpen(true)}>
              {others.length === 1 ? 'One more' : `${others.length} more`}
            </button>
          )}
        </p>
      </div>
      <button className="button" type="button" onClick={() => goToItem(first)}>
        {act}
        <span className="visually-hidden">: {first.title}</span>
      </button>
      {open && <TodayList items={items} onClose={() => setOpen(false)} />}
    </section>
  );
}

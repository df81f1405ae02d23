// Everything that today asks for, due first.
import { useModal } from '../parts/use-modal';
import { CalendarButton } from '../parts/calendar-button';
import { goToItem, todayAct, type TodayItem } from '../parts/today-item';

export function TodayList({
  items,
  onClose,
}: {
  readonly items: readonly TodayItem[];
  readonly onClose: () => void;
}) {
  const dialog = useModal();
  return (
    <dialog ref={dialog} aria-labelledby="today-list" onClose={onClose}>
      <header className="today-list-head">
        <h2 id="today-list">Today</h2>
        <button className="button quiet" type="button" onClick={onClose}>
          Close
        </button>
      </header>
      <ul className="today-list">
        {items.map((item) => (
          <li key={item.id} className={item.due ? 'due' : undefined}>
            <div>
              <p className="today-title">{item.title}</p>
              <p className="soft">{item.rest}</p>
            </div>
            <button className="button" type="button" onClick={() => goToItem(item)}>
              {todayAct(item)}
              <span className="visually-hidden">: {item.title}</span>
            </button>
          </li>
        ))}
      </ul>
      <CalendarButton />
    </dialog>
  );
}

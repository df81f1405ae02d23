// What is to come, saved as a calendar file where the system's dialog says.
import { startJob } from '../state/ledger-calls';
import { say } from '../state/store';

async function save(): Promise<void> {
  const answer = await startJob('calendar.write', { file: { name: 'jarline.ics' } }).done;
  if (answer.ok)
    say(
      `${answer.value.events === 1 ? 'One event lies' : `${answer.value.events} events lie`} in ${answer.value.file}. Brought in again later, they move instead of doubling.`,
    );
  else if (answer.error.code !== 'cancelled') say(answer.sentence, 'caution');
}

export const CalendarButton = () => (
  <button type="button" className="button" onClick={() => void save()}>
    Save as a calendar file…
  </button>
);

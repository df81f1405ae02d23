// Another day is noticed on a clock of the test's own. Europe/Berlin put its clocks forward on 2026-03-29 at 02:00.
import { expect, it } from 'vitest';
import { watchDay } from '../../main/day-watch';
import { machineClock } from '../../main/ledger/clock';

/** A machine whose clock and timer stand in the hands of the test. */
function machine(start: string) {
  let at = Date.parse(start);
  const timers: { ms: number; work: () => void }[] = [];
  const heard: string[] = [];
  const clock = machineClock('Europe/Berlin', () => at);
  const watch = watchDay(
    clock.today,
    () => heard.push(clock.today()),
    (ms, work) => {
      const timer = { ms, work };
      timers.push(timer);
      return () => void timers.splice(timers.indexOf(timer), 1);
    },
  );
  const pass = (ms: number): void => {
    const end = at + ms;
    const step = timers[0]?.ms ?? ms;
    while (at + step <= end) {
      at += step;
      for (const { work } of timers) work();
    }
    at = end;
  };
  return { heard, watch, pass, sleep: (ms: number) => void (at += ms), timers };
}

const HOUR = 3_600_000;

it('tells of a new day once, within a minute of midnight', () => {
  const { heard, pass } = machine('2026-03-14T23:59:00+01:00');
  pass(59_000);
  expect(heard).toEqual([]);
  pass(61_000);
  expect(heard).toEqual(['2026-03-15']);
  pass(23 * HOUR);
  expect(heard).toEqual(['2026-03-15']);
  pass(2 * HOUR);
  expect(heard).toEqual(['2026-03-15', '2026-03-16']);
});

it('tells of it at once when the machine wakes, however long it slept, and also when its clock was set back', () => {
  const { heard, watch, sleep } = machine('2026-03-14T22:00:00+01:00');
  sleep(HOUR);
  watch.look();
  expect(heard).toEqual([]);
  sleep(60 * HOUR);
  watch.look();
  expect(heard).toEqual(['2026-03-17']);
  sleep(-24 * HOUR);
  watch.look();
  expect(heard).toEqual(['2026-03-17', '2026-03-16']);
});

it('goes by the keeper’s midnight, also in the night the clocks change', () => {
  const { heard, pass } = machine('2026-03-28T22:30:00Z'); // 23:30 in Berlin
  pass(HOUR);
  expect(heard).toEqual(['2026-03-29']);
  pass(22 * HOUR); // 21:30 UTC is 23:30 there: this day has 23 hours
  expect(heard).toEqual(['2026-03-29']);
  pass(HOUR);
  expect(heard).toEqual(['2026-03-29', '2026-03-30']);
});

it('ends when told to', () => {
  const { heard, watch, pass, timers } = machine('2026-03-14T23:59:00+01:00');
  watch.stop();
  expect(timers).toEqual([]);
  pass(HOUR);
  expect(heard).toEqual([]);
});

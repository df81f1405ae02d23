// The calendar of what is to come as a file. One that was written before may be written over: the events in it keep their ids,
// so that a calendar program moves what it has instead of doubling it. Nothing else is written over.
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Parsed, Reply } from '../../core/contract';
import { OWN_CALENDAR } from '../../core/plan/calendar-file';
import { chosenPath } from '../files/chosen-path';
import type { Ledger } from '../ledger/ledger';
import { ownName } from '../ledger/place';
import { calendarOf } from '../ledger/reads/read-plan';
import { Refused, refusedFor } from '../refusal';

/** @throws Refused 'not from here', 'nothing to come', 'file exists', 'no folder there', and for a place that can't be written to */
export function writeCalendar(
  ledger: Ledger,
  { file: told }: Parsed<'calendar.write'>,
): Reply<'calendar.write'> {
  const file = resolve(chosenPath(told, 'calendar.write'));
  const { ics, events } = calendarOf(ledger);
  if (events.length === 0) throw new Refused('nothing to come');
  const part = ownName(file);
  try {
    if (existsSync(file) && !readFileSync(file, 'utf8').includes(OWN_CALENDAR))
      throw new Refused('file exists', { file });
    writeFileSync(part, ics, { flag: 'wx' });
    renameSync(part, file);
    return { file, events: events.length };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') throw new Refused('no folder there', { file });
    throw refusedFor(error, file);
  } finally {
    rmSync(part, { force: true });
  }
}

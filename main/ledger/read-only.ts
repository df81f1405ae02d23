// A call that reads gets a connection that can't write, whatever its handler does; one that takes long is told of.
import type Database from 'better-sqlite3';

/** Longer than this at work (s of this process, not of the clock: another program may have the processor), and it is told. */
const SLOW_SECONDS = 2;

/**
 * Runs a reading call.
 * @param name for the line on stderr where it was slow
 */
export function readOnly<T>(
  name: string,
  db: Database.Database,
  work: () => T,
  slowSeconds = SLOW_SECONDS,
): T {
  const before = process.cpuUsage();
  db.pragma('query_only = ON');
  try {
    return work();
  } finally {
    db.pragma('query_only = OFF');
    const { user, system } = process.cpuUsage(before);
    const seconds = (user + system) / 1e6;
    if (seconds > slowSeconds) process.stderr.write(`jarline: slow: ${name} took ${seconds.toFixed(1)} s\n`);
  }
}

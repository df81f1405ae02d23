// `check --ledger FILE`: looks through a ledger, its photographs and its backups, and changes nothing. For whoever worries.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import type { Finding } from '../core/says/check-says';
import { fileFindings, recordFindings, ruleFindings } from './ledger/ledger-findings';
import { latestOf, migrations } from './ledger/migrations/all-migrations';
import { inspect, lookForLedger } from './ledger/open';
import { realFile } from './ledger/place';
import { backupFolder, photographFolder } from './ledger/worker-protocol';
import { Refused, refusalOf, refusedFor } from './refusal';

export interface Checked {
  readonly findings: readonly Finding[];
  /** What was looked at. */
  readonly jars: number;
  readonly acts: number;
  readonly photographs: number;
  readonly backups: number;
}

/** What a refusal to open says of the file, as a finding. */
const WHAT_IS_WRONG: Readonly<Record<string, string>> = {
  damaged: 'SQLite can’t read it as a whole',
  'log damaged': 'what was recorded last can’t all be read from the log beside it',
  'altered ledger': 'the rules inside it were altered',
};

const countIn = (db: Database.Database, sql: string): number => Number(db.prepare(sql).pluck().get());

/** What a look at one thing finds; an error that says the file is damaged is a finding too. */
function* looked(look: () => Iterable<Finding>, file: string): Generator<Finding> {
  try {
    yield* look();
  } catch (error) {
    const refused = refusalOf(error, file);
    if (refused?.refusal.code !== 'damaged') throw error;
    yield { code: 'file', what: 'a part of it can’t be read' };
  }
}

function photographsIn(db: Database.Database, file: string): { count: number; missing: number } {
  const hashes = db.prepare('SELECT DISTINCT sha FROM photograph ORDER BY 1').pluck().all() as string[];
  const isThere = (sha: string): boolean => {
    const place = join(photographFolder(file), `${sha}.jpg`);
    return existsSync(place) && createHash('sha256').update(readFileSync(place)).digest('hex') === sha;
  };
  return { count: hashes.length, missing: hashes.filter((sha) => !isThere(sha)).length };
}

function* backupsOf(file: string): Generator<{ backup: string; good: boolean }> {
  const folder = backupFolder(file);
  for (const name of existsSync(folder) ? readdirSync(folder).toSorted() : []) {
    if (!name.endsWith('.sqlite')) continue;
    const backup = join(folder, name);
    let good = true;
    try {
      inspect(backup, () => undefined);
    } catch (error) {
      if (!refusalOf(error, backup)) throw error;
      good = false;
    }
    yield { backup, good };
  }
}

/** A ledger that can be opened at all, looked through. */
function lookThrough(file: string): Omit<Checked, 'backups'> {
  return inspect(file, (db, version) => {
    const findings = [...looked(() => fileFindings(db), file)];
    if (version < 1) return { findings, jars: 0, acts: 0, photographs: 0 };
    // Where pages are damaged, what rows say can't be relied on; and of an older ledger the rules are another program's.
    if (findings.length === 0 && version === latestOf(migrations)) {
      findings.push(...looked(() => recordFindings(db), file));
      // What points nowhere can't be asked about.
      if (findings.length === 0) findings.push(...looked(() => ruleFindings(db), file));
    }
    const { count, missing } = findings.length === 0 ? photographsIn(db, file) : { count: 0, missing: 0 };
    if (missing > 0) findings.push({ code: 'photographs', count: missing });
    const whole = findings.every(({ code }) => code !== 'file');
    return {
      findings,
      jars: whole ? countIn(db, "SELECT count(*) FROM jar WHERE state IN ('made', 'lost')") : 0,
      acts: whole ? countIn(db, 'SELECT count(*) FROM act') : 0,
      photographs: count,
    };
  });
}

/**
 * Checks a ledger.
 * @throws Refused where it can't be looked at: it is not there, no ledger, or of another version
 */
export function checkLedgerFile(named: string): Checked {
  const file = realFile(named);
  let found: Omit<Checked, 'backups'>;
  try {
    if (lookForLedger(file) < 0) throw new Refused('no such file', { file: named });
    found = lookThrough(file);
  } catch (error) {
    const refused = refusedFor(error, file);
    if (!(refused instanceof Refused)) throw refused;
    const { code } = refused.refusal;
    const what = WHAT_IS_WRONG[code];
    if (what === undefined) throw refused;
    found = { findings: [{ code: 'file', what }], jars: 0, acts: 0, photographs: 0 };
  }
  const backups = [...backupsOf(file)];
  const bad = backups
    .filter(({ good }) => !good)
    .map(({ backup }): Finding => ({ code: 'backup', file: backup }));
  return { ...found, findings: [...found.findings, ...bad], backups: backups.length };
}

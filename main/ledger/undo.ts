// Undo and redo. Undoing writes a new act with the inverse images of one whole act; redoing undoes that undo. Nothing
// is kept in memory, so it works the same after a restart. Refused, with names, where later facts stand on it.
import { actWords } from '../../core/ledger/act-words';
import type { Acts, Done } from './facts/open-act';
import { invertAct } from './facts/invert';
import { inTheWay, standsOn, touchedSince } from './facts/later';
import { Refused } from '../refusal';
import type { Rows } from './facts/fact-rows';

export interface ActRow {
  readonly key: number;
  readonly uid: string;
  readonly kind: string;
  /** Seconds since 1970, and the offset in minutes. */
  readonly at: number;
  readonly at_off: number;
  readonly subject: string;
  readonly why: string | null;
  readonly undoes: number | null;
}

export const wordsOf = (act: ActRow): string => actWords(act.kind, act.subject);

/** Keys of the acts that are undone as things stand. An undo that was itself undone counts no more. */
export function undoneActs(rows: Rows): ReadonlySet<number> {
  const undone = new Set<number>();
  const undos = rows
    .prepare(
      `SELECT key, undoes FROM act INDEXED BY act_undoes WHERE undoes IS NOT NULL
        UNION ALL SELECT act, undoes FROM undone_with ORDER BY 1 DESC`,
    )
    .all();
  for (const { key, undoes } of undos as { key: number; undoes: number }[]) {
    if (!undone.has(key)) undone.add(undoes);
  }
  return undone;
}

export const actByKey = (rows: Rows, key: number): ActRow =>
  rows.prepare('SELECT * FROM act WHERE key = ?').get(key) as ActRow;

/** The act that an undo or a redo is about in the end: what was done again is said once, in the words it was done. */
function rootOf(rows: Rows, act: ActRow): ActRow {
  let root = act;
  while (root.undoes !== null) root = actByKey(rows, root.undoes);
  return root;
}

/** The act that undo, asked for nothing in particular, would undo. Preferences are no part of it. */
export function nextUndo(rows: Rows): ActRow | null {
  const undone = undoneActs(rows);
  const acts = rows.db
    .prepare("SELECT * FROM act WHERE undoes IS NULL AND kind <> 'preferences.save' ORDER BY key DESC")
    .iterate() as IterableIterator<ActRow>;
  for (const act of acts) if (!undone.has(act.key)) return act;
  return null;
}

/** The undo that redo would undo: the latest that stands, as long as nothing was recorded after it. */
export function nextRedo(rows: Rows): ActRow | null {
  const undone = undoneActs(rows);
  const last = rows.count("SELECT max(key) FROM act WHERE undoes IS NULL AND kind <> 'preferences.save'");
  const undos = rows.db
    .prepare("SELECT * FROM act WHERE kind = 'act.undo' AND key > ? ORDER BY key DESC")
    .iterate(last) as IterableIterator<ActRow>;
  for (const act of undos) if (!undone.has(act.key)) return act;
  return null;
}

/**
 * Acts that would be undone with some that are asked for: those, and every later one that stands on one of them, as far
 * as it is not undone. Newest first, as they are taken back.
 * @throws Refused 'not found', 'undone already'
 */
export function undoneTogether(rows: Rows, uids: readonly string[]): ActRow[] {
  const undone = undoneActs(rows);
  const found = new Map<number, ActRow>();
  const add = (act: ActRow): void => {
    if (found.has(act.key) || undone.has(act.key)) return;
    found.set(act.key, act);
    for (const later of standsOn(rows, act.key, touchedSince(rows, act.key))) add(actByKey(rows, later));
  };
  for (const uid of uids) {
    const act = rows.prepare('SELECT * FROM act WHERE uid = ?').get(uid) as ActRow | undefined;
    if (!act) throw new Refused('not found', { kind: 'act' });
    if (undone.has(act.key)) throw new Refused('undone already', { says: wordsOf(act) });
    add(act);
  }
  return [...found.values()].toSorted((a, b) => b.key - a.key);
}

/**
 * Undoes several acts as one.
 * @param later what stands on them goes with them; else it is refused
 * @throws Refused 'not found', 'undone already', 'stands on it', and as the rule book says
 */
export function undoMany(acts: Acts, uids: readonly string[], later: boolean): Done<string> {
  const { rows } = acts;
  let chosen: readonly ActRow[] = [];
  try {
    const done = acts.runChosen(
      () => {
        const targets = undoneTogether(rows, uids);
        const asked = new Set(uids);
        const others = targets.filter(({ uid }) => !asked.has(uid));
        if (others.length > 0 && !later) throw refusedBy(rows, others.map(({ key }) => key)); // prettier-ignore
        chosen = targets;
        const subject = targets.map(wordsOf).join('; ');
        return { kind: 'act.undo' as const, subject, why: null, undoes: targets[0]?.key ?? null, targets };
      },
      (act, { kind, subject, targets }) => {
        const insert = rows.prepare('INSERT INTO undone_with (act, undoes) VALUES (?, ?)');
        for (const { key } of targets.slice(1)) insert.run(act.key, key);
        for (const { key } of targets) invertAct(rows, act, key);
        return actWords(kind, subject);
      },
    );
    if (!done) throw new Refused('nothing changed');
    return done;
  } catch (error) {
    throw plainerThan(error, rows, chosen);
  }
}

/**
 * Why acts can't be undone, the plainer answer first: what was done since, rather than the rule that it would break. What
 * comes back beside something that is gone can't be asked about at all.
 */
function plainerThan(error: unknown, rows: Rows, targets: readonly ActRow[]): unknown {
  const own = new Set(targets.map(({ key }) => key));
  const inWay = targets.flatMap(({ key }) => inTheWay(rows, key)).filter((key) => !own.has(key));
  return inWay.length > 0 ? refusedBy(rows, inWay) : error;
}

/** What an undo or a redo is about. */
interface Inverse {
  readonly target: ActRow;
  readonly kind: 'act.undo' | 'act.redo';
  readonly subject: string;
}

/** @throws Refused 'nothing to undo', 'not found', 'undone already' */
function toUndo(rows: Rows, uid: string | null): Inverse {
  if (uid === null) {
    const next = nextUndo(rows);
    if (!next) throw new Refused('nothing to undo');
    return { target: next, kind: 'act.undo', subject: wordsOf(next) };
  }
  const asked = rows.prepare('SELECT * FROM act WHERE uid = ?').get(uid) as ActRow | undefined;
  if (!asked) throw new Refused('not found', { kind: 'act' });
  // Undoing an undo is doing again; undoing a redo is undoing what it did again.
  let root = asked;
  let depth = 0;
  for (; root.undoes !== null; depth++) root = actByKey(rows, root.undoes);
  const undone = undoneActs(rows);
  if (depth % 2 === 0) {
    if (undone.has(root.key)) throw new Refused('undone already', { says: wordsOf(root) });
    return { target: root, kind: 'act.undo', subject: wordsOf(root) };
  }
  if (undone.has(asked.key)) throw new Refused('undone already', { says: wordsOf(asked) });
  return { target: asked, kind: 'act.redo', subject: wordsOf(root) };
}

/** @throws Refused 'nothing to redo' */
function toRedo(rows: Rows): Inverse {
  const next = nextRedo(rows);
  if (!next || next.undoes === null) throw new Refused('nothing to redo');
  return { target: next, kind: 'act.redo', subject: wordsOf(actByKey(rows, next.undoes)) };
}

/**
 * Undoes an act, or does again what an undo took away.
 * @param uid of the act; null: the latest
 * @throws Refused 'nothing to undo', 'not found', 'undone already', 'stands on it', and as the rule book says
 */
export const undo = (acts: Acts, uid: string | null): Done<string> =>
  invert(acts, () => toUndo(acts.rows, uid));

/** @throws Refused 'nothing to redo', 'stands on it', and as the rule book says */
export const redo = (acts: Acts): Done<string> => invert(acts, () => toRedo(acts.rows));

/** The refusal that names later acts. What was undone is named only where nothing else is, and then with its undo. */
function refusedBy(rows: Rows, acts: readonly number[]): Refused {
  const undone = undoneActs(rows);
  const standing = acts.filter((key) => !undone.has(key));
  const named = (standing.length > 0 ? standing : acts).map((key) => actByKey(rows, key));
  const says = [...new Set(named.map((act) => wordsOf(act.kind === 'act.undo' ? act : rootOf(rows, act))))];
  return new Refused('stands on it', {
    later: says.length > 5 ? [...says.slice(0, 5), `and ${says.length - 5} more`] : says,
  });
}

/** Chosen and done in one transaction: of two programs on one ledger neither writes between the other's choice and its undo. */
function invert(acts: Acts, choose: () => Inverse): Done<string> {
  const { rows } = acts;
  let chosen: readonly ActRow[] = [];
  try {
    const done = acts.runChosen(
      () => {
        const { kind, subject, target } = choose();
        const standing = standsOn(rows, target.key, touchedSince(rows, target.key));
        if (standing.length > 0) throw refusedBy(rows, standing);
        chosen = [target];
        return { kind, subject, why: null, undoes: target.key };
      },
      (act, { kind, subject, undoes }) => {
        invertAct(rows, act, undoes);
        return actWords(kind, subject);
      },
    );
    if (!done) throw new Refused('nothing changed');
    return done;
  } catch (error) {
    throw plainerThan(error, rows, chosen);
  }
}

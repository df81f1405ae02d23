// Lines that tell one thing of all rows below them, "Seed: 12 capsules Blue Tin", become columns of their own.
import type { NoteColumn } from '../../contract';
import { plain, tidy } from '../../quantities/quantities';
import { hasTrait } from '../meanings';
import { assumed } from '../notes-says';
import type { Said } from '../said';
import type { Row, Table } from '../table/table-rows';
import { headingMeaning } from './headings';

const LONGEST_KEY = 30;

/** One thing told of the rows below. */
interface Key {
  readonly name: string;
  readonly value: string;
  readonly meaning: NoteColumn;
}

/** "Seed: X" in one cell, or "Seed:" and "X" in two, above the headings also "Seed" and "X"; null where a line is none. */
function keyOf(row: Row, above = false): Key | null {
  const [first = '', second, ...others] = row.cells.map(tidy).filter(Boolean);
  const parted = /^([^:]*\p{L}{3}[^:]*?)\s*:\s*(.*)$/su.exec(first);
  const loose = above && !parted && second !== undefined && headingMeaning(second) === null;
  const [inside = '', after = ''] = parted ? parted.slice(1) : loose ? [first] : [];
  if (row.long || others.length > 0 || inside === '' || (after === '') === (second === undefined))
    return null;
  const found = inside.length <= LONGEST_KEY ? headingMeaning(inside) : null;
  if (found?.sure !== 3 || !hasTrait(found.meaning, 'shared')) return null;
  return { name: inside, value: after || (second ?? ''), meaning: found.meaning };
}

/** Whether a line tells one thing of the rows below it. */
export const isKeyLine = (row: Row): boolean => keyOf(row) !== null;

/**
 * Rows with what lines above them told, in columns behind their own; those lines are gone. A thing that a column tells
 * stays a line: the column knows better.
 * @param names of the columns; those that are told by lines are added
 * @param above lines above the headings
 */
export function withKeyLines(
  rows: readonly Row[],
  above: readonly Row[],
  names: string[],
  said: Said[],
  look: Table['look'],
): { rows: Row[]; used: ReadonlySet<Row> } {
  const meanings = new Set(names.map((name) => headingMeaning(name)?.meaning));
  const used = new Set<Row>();
  const places = new Map<string, number>();
  const now = new Map<number, string>();
  const take = (row: Row, isAbove = false): boolean => {
    const key = keyOf(row, isAbove);
    if (!key || meanings.has(key.meaning)) return false;
    const place = places.get(plain(key.name)) ?? names.push(key.name) - 1;
    places.set(plain(key.name), place);
    now.set(place, key.value);
    used.add(row);
    said.push({ row: row.line, sentence: assumed.sharedBelow(key.name, key.value) });
    return true;
  };
  for (const row of above) take(row, true);
  const below = rows.flatMap((row): Row[] => {
    look?.();
    if (take(row)) return [];
    // A line with one thing on it heads those below it, or is a remark.
    if (now.size === 0 || row.cells.filter((cell) => tidy(cell) !== '').length < 2) return [row];
    const cells = [...row.cells];
    for (const [place, value] of now) {
      while (cells.length <= place) cells.push('');
      cells[place] = value;
    }
    return [{ ...row, cells }];
  });
  return { rows: below, used };
}

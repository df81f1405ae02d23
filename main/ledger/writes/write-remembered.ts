// Earlier jars from memory: several batches in one act, whose jars may have seeded each other, and of which nobody may be sure.
import type { Parsed, Reply } from '../../../core/contract';
import { calledDay } from '../../../core/lineage/labels';
import { Refused } from '../../refusal';
import { addHold as addWarmth } from '../entries/hold-entry';
import { addSeeding, type SeedingEntry } from '../entries/kept-entries';
import { addBatch, refuseHalfRange } from '../entries/larder-entries';
import type { OpenAct } from '../facts/open-act';
import type { Ledger } from '../ledger';
import { mustSay, tidy } from '../tidy-typed';
import { insertJar } from './write-batch';
import { putLost } from './write-jars';
import { labelsInShort, seedingRow } from './write-parts';

type Entry = Parsed<'jars.remember'>;
type Jar = Entry['jars'][number];

/** One seeding with keys: of a jar of this call, or of what the ledger has. @throws Refused 'invalid', and as seedingRow */
function seeding(
  ledger: Ledger,
  act: OpenAct,
  jar: number,
  given: Jar['seedings'][number],
  here: readonly number[],
): SeedingEntry {
  const { fromHere, either, ...entry } = given;
  if (fromHere === undefined) return { ...seedingRow(ledger, act, jar, entry), either };
  if (
    entry.fromJar !== null ||
    entry.source !== null ||
    entry.newSource !== undefined ||
    entry.portion !== null
  )
    throw new Refused('one seed');
  const from = here[fromHere];
  if (from === undefined)
    throw new Refused('invalid', { path: 'fromHere', problem: 'names no jar of this call' });
  const { part, amount } = entry;
  return { jar, fromJar: from, portion: null, part, source: null, package: null, amount, either };
}

/** What seeded the jars. Of one jar that nobody can name come all those of a batch of which no seed is known. */
function seedAll(ledger: Ledger, act: OpenAct, jars: readonly Jar[], keys: readonly number[]): void {
  const lost = new Map<number, number>();
  for (const [at, { batch, seedings }] of jars.entries()) {
    const jar = keys[at] as number;
    for (const one of seedings) addSeeding(act, seeding(ledger, act, jar, one, keys));
    if (seedings.length > 0) continue;
    const from = lost.get(batch) ?? putLost(ledger, act);
    lost.set(batch, from);
    addSeeding(act, {
      jar,
      fromJar: from,
      portion: null,
      part: null,
      source: null,
      package: null,
      amount: null,
    });
  }
}

/** The call as it may be recorded. @throws Refused 'no such hold', 'invalid', 'range of days' */
function checked(given: Entry): Entry {
  const entry = tidy(given);
  entry.batches.forEach(refuseHalfRange);
  const jars = entry.jars.map((jar) => {
    mustSay(jar, 'letter');
    for (const addition of jar.additions) mustSay(addition, 'name');
    const batch = entry.batches[jar.batch];
    if (batch === undefined)
      throw new Refused('invalid', { path: 'batch', problem: 'names no batch of this call' });
    if (jar.hold !== null && jar.hold >= batch.holds.length)
      throw new Refused('no such hold', { jar: jar.letter });
    return { ...jar, letter: jar.letter.toLowerCase() };
  });
  const alone = entry.batches.findIndex((_, at) => jars.every(({ batch }) => batch !== at));
  if (alone >= 0)
    throw new Refused('invalid', { path: `batches.${alone}`, problem: 'has no jar in this call' });
  return { ...entry, jars };
}

/**
 * Records them, in the order of the call. A seed may stand in it before or after what it seeded.
 * @throws Refused 'no such hold', 'one seed', 'range of days', 'not found', and as the rule book says
 */
export function rememberJars(ledger: Ledger, given: Entry): Reply<'jars.remember'> {
  const entry = checked(given);
  const { batches, jars } = entry;
  const subjects = batches.map((batch, at) =>
    labelsInShort(
      jars
        .filter((jar) => jar.batch === at)
        .map(({ letter }) => ({
          letter,
          label: ledger.labelFor({ ...calledDay(batch), word: batch.word, letter }),
        })),
    ),
  );
  const done = ledger.acts.mustRun(
    'jars.remember',
    subjects.join('; '),
    entry.why,
    (act) => {
      const made = batches.map(({ holds, ...batch }) => {
        const key = addBatch(act, batch);
        return {
          key,
          warm: holds.map((hold) => addWarmth(act, { ...hold, batch: key, basis: 'recorded' }, null)),
        };
      });
      const uids = jars.map(({ batch, hold, ...jar }) => {
        const { key, warm } = made[batch] as (typeof made)[number];
        const at = hold === null ? null : (warm[hold] ?? null);
        return insertJar(ledger, act, key, at, { ...jar, state: 'made', seedings: [] });
      });
      seedAll(ledger, act, jars, uids.map((uid) => ledger.rows.keyOf('jar', uid))); // prettier-ignore
      return { batches: made.map(({ key }) => ledger.rows.uidOf('batch', key)), jars: uids };
    },
    entry.draft,
    entry.sameLabelMeant,
  );
  return { act: done.act.uid, ...done.value };
}

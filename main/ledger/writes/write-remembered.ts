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
type Seedings = Entry['batches'][number]['jars'][number]['seedings'];
/** Keys of the jars of a call, by the places of batch and jar. */
type Places = readonly (readonly number[])[];

/** One seeding with keys: of a jar of this call, or of what the ledger has. @throws Refused 'invalid', and as seedingRow */
function seeding(
  ledger: Ledger,
  act: OpenAct,
  jar: number,
  given: Seedings[number],
  here: Places,
): SeedingEntry {
  const { fromHere, either, ...entry } = given;
  if (fromHere === undefined) return { ...seedingRow(ledger, act, jar, entry), either };
  const from = here[fromHere.batch]?.[fromHere.jar];
  if (from === undefined)
    throw new Refused('invalid', { path: 'fromHere', problem: 'names no jar of this call' });
  if (entry.fromJar !== null || entry.source !== null || entry.newSource !== undefined)
    throw new Refused('one seed');
  const { part, amount } = entry;
  return { jar, fromJar: from, portion: null, part, source: null, package: null, amount, either };
}

/** What seeded the jars of a batch. Of one jar that nobody can name come all of them of which no seed is known. */
function seedAll(
  ledger: Ledger,
  act: OpenAct,
  keys: readonly number[],
  told: readonly Seedings[],
  here: Places,
): void {
  let lost: number | null = null;
  for (const [at, jar] of keys.entries()) {
    const seedings = told[at] ?? [];
    for (const one of seedings) addSeeding(act, seeding(ledger, act, jar, one, here));
    if (seedings.length > 0) continue;
    lost ??= putLost(ledger, act);
    const unknown = { portion: null, part: null, source: null, package: null, amount: null };
    addSeeding(act, { jar, fromJar: lost, ...unknown });
  }
}

/**
 * Records them, in the order of the call. A seed may stand in it before or after what it seeded.
 * @throws Refused 'no such hold', 'one seed', 'range of days', 'not found', and as the rule book says
 */
export function rememberJars(ledger: Ledger, given: Entry): Reply<'jars.remember'> {
  const entry = tidy(given);
  const batches = entry.batches.map((batch) => {
    refuseHalfRange(batch);
    return {
      ...batch,
      jars: batch.jars.map((jar) => {
        mustSay(jar, 'letter');
        for (const addition of jar.additions) mustSay(addition, 'name');
        if (jar.hold !== null && jar.hold >= batch.holds.length)
          throw new Refused('no such hold', { jar: jar.letter });
        return { ...jar, letter: jar.letter.toLowerCase() };
      }),
    };
  });
  const labelled = batches.map((batch) =>
    batch.jars.map(({ letter }) => ({
      letter,
      label: ledger.labelFor({ ...calledDay(batch), word: batch.word, letter }),
    })),
  );
  const done = ledger.acts.mustRun(
    'jars.remember',
    labelled.map(labelsInShort).join('; '),
    entry.why,
    (act) => {
      const made = batches.map(({ madeOn, madeFrom, madeTo, word, note, holds, jars }) => {
        const key = addBatch(act, { madeOn, madeFrom, madeTo, word, note });
        const warm = holds.map((hold) => addWarmth(act, { ...hold, batch: key, basis: 'recorded' }, null));
        const uids = jars.map(({ hold, ...jar }) =>
          insertJar(ledger, act, key, hold === null ? null : (warm[hold] ?? null), {
            ...jar,
            state: 'made',
            seedings: [],
          }),
        );
        return { key, uids, keys: uids.map((uid) => ledger.rows.keyOf('jar', uid)) };
      });
      const here = made.map(({ keys }) => keys);
      for (const [at, { keys }] of made.entries())
        seedAll(ledger, act, keys, batches[at]?.jars.map(({ seedings }) => seedings) ?? [], here);
      return {
        batches: made.map(({ key }) => ledger.rows.uidOf('batch', key)),
        jars: made.flatMap(({ uids }) => uids),
      };
    },
    entry.draft,
    entry.sameLabelMeant,
  );
  return { act: done.act.uid, ...done.value };
}

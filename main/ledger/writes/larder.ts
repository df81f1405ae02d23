// Sources, packages, portions kept apart, preferences and drafts.
import type { Parsed, Reply } from '../../../core/contract';
import type { Amount } from '../../../core/ledger/basics';
import type { Ledger } from '../ledger';
import { refuseJarName } from '../jar-names';
import { refuseGoneOn, refuseKeptOn, refuseLargerPortion } from '../possible';
import { Refused } from '../refusal';
import { standingJar } from './parts';
import { jarSpoiled } from './spoiled';
import { inOrder, mustSay, tidy, whenOf } from './tidy';

/** @throws Refused 'name of a jar', 'not found', 'invalid' */
export function saveSource(ledger: Ledger, input: Parsed<'source.save'>): Reply<'source.save'> {
  const { id, ...fields } = tidy(input.source);
  mustSay(fields, 'name');
  const key = ledger.rows.keyOrNull('source', id);
  if (key === null || ledger.rows.get('source', key).name !== fields.name) refuseJarName(ledger, fields.name);
  const done = ledger.acts.mustRun(
    'source.save',
    fields.name,
    tidy(input.why),
    (act) => {
      if (key === null) return act.insert('source', fields).uid;
      act.update('source', key, fields);
      return ledger.rows.uidOf('source', key);
    },
    input.draft,
  );
  return { act: done.act.uid, id: done.value };
}

export function savePackage(ledger: Ledger, input: Parsed<'package.save'>): Reply<'package.save'> {
  const { id, source, ...given } = tidy(input.package);
  mustSay(given, 'name');
  inOrder('Bought and opened', whenOf(given.boughtOn), whenOf(given.openedOn));
  if (source !== null && given.of !== 'source')
    throw new Refused('package of something else', { name: given.name });
  const fields = { ...given, source: ledger.rows.keyOrNull('source', source) };
  const key = ledger.rows.keyOrNull('package', id);
  const done = ledger.acts.mustRun(
    'package.save',
    fields.name,
    tidy(input.why),
    (act) => {
      if (key === null) return act.insert('package', fields).uid;
      act.update('package', key, fields);
      return ledger.rows.uidOf('package', key);
    },
    input.draft,
  );
  return { act: done.act.uid, id: done.value };
}

const sameAs = (one: Amount | null, other: Amount | null): boolean =>
  one?.value === other?.value && one?.unit === other?.unit;

/** @throws Refused 'portion of another jar', 'times crossed', 'kept before made', 'kept day to come', 'portion kept later', 'gone day to come', 'portion of nothing', 'portion more than jar', 'reserve spoiled', 'not found', 'is a mistake' */
export function savePortion(ledger: Ledger, input: Parsed<'portion.save'>): Reply<'portion.save'> {
  const { id, jar: jarUid, ...given } = tidy(input.portion);
  const jar = standingJar(ledger, jarUid);
  const key = ledger.rows.keyOrNull('portion', id);
  const old = key === null ? null : ledger.rows.get('portion', key);
  if (old !== null && old.jar !== jar.key) {
    throw new Refused('portion of another jar', { jar: jar.label });
  }
  inOrder('Kept and gone', whenOf(given.keptOn), whenOf(given.goneOn));
  if (old?.keptOn !== given.keptOn) refuseKeptOn(ledger, jar, given.keptOn, key);
  if (old?.goneOn !== given.goneOn) refuseGoneOn(ledger, jar, given.goneOn);
  const sameAmount = old !== null && old.part === given.part && sameAs(old.amount, given.amount);
  if (!sameAmount) {
    const { finalVolume } = ledger.rows.get('jar', jar.key);
    if (given.amount?.value === 0) throw new Refused('portion of nothing', { jar: jar.label });
    refuseLargerPortion({ label: jar.label, finalVolume }, given);
  }
  // What was kept before anyone knew may still be corrected, and said to be gone.
  const keeps = given.reserve && given.goneOn === null;
  const kept = old !== null && old.reserve && old.goneOn === null;
  if (keeps && !kept && jarSpoiled(ledger, jar.key)) throw new Refused('reserve spoiled', { jar: jar.label });
  const fields = { ...given, jar: jar.key };
  const done = ledger.acts.mustRun(
    'portion.save',
    `some of ${jar.label}`,
    tidy(input.why),
    (act) => {
      if (key === null) return act.insert('portion', fields).uid;
      act.update('portion', key, fields);
      return ledger.rows.uidOf('portion', key);
    },
    input.draft,
  );
  return { act: done.act.uid, id: done.value };
}

export function savePreferences(
  ledger: Ledger,
  preferences: Parsed<'preferences.save'>,
): Reply<'preferences.save'> {
  const [old] = ledger.rows.all('preferences');
  const done = ledger.acts.mustRun('preferences.save', 'preferences', null, (act) => {
    if (old) act.update('preferences', old.key, preferences);
    else act.insert('preferences', preferences);
  });
  return { act: done.act.uid };
}

/** Drafts are no records: they leave no trace in the journal. */
export function saveDraft(ledger: Ledger, { key, json }: Parsed<'draft.save'>): Reply<'draft.save'> {
  try {
    JSON.parse(json);
  } catch {
    throw new Refused('invalid', { path: 'json', problem: 'is not JSON' });
  }
  const savedAt = ledger.clock.now();
  ledger.rows
    .prepare(
      `INSERT INTO draft (key, json, saved_at) VALUES (?, ?, ?)
       ON CONFLICT (key) DO UPDATE SET json = excluded.json, saved_at = excluded.saved_at`,
    )
    .run(key, json, savedAt);
  return { savedAt };
}

export function dropDraft(ledger: Ledger, { key }: Parsed<'draft.drop'>): Reply<'draft.drop'> {
  ledger.rows.prepare('DELETE FROM draft WHERE key = ?').run(key);
  return {};
}

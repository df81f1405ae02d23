// Sources, packages, portions kept apart, preferences and drafts.
import type { Parsed, Reply } from '../../../core/contract';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';
import { addPortion, changePortion } from '../entries/kept-entries';
import { addSource, changeSource, putPackage } from '../entries/larder-entries';
import type { Ledger } from '../ledger';
import { refuseJarName } from '../jar-names';
import { Refused } from '../../refusal';
import { standingJar } from './write-parts';
import { mustSay, refuseUnreadable, tidy } from '../tidy-typed';

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
      if (key !== null) changeSource(act, key, fields);
      return ledger.rows.uidOf('source', key ?? addSource(act, fields));
    },
    input.draft,
  );
  return { act: done.act.uid, id: done.value };
}

export function savePackage(ledger: Ledger, input: Parsed<'package.save'>): Reply<'package.save'> {
  const { id, source, ...given } = tidy(input.package);
  mustSay(given, 'name');
  // The table itself refuses this, before the rule book is asked.
  if (source !== null && given.of !== 'source')
    throw new Refused('package of something else', { name: given.name });
  const fields = { ...given, source: ledger.rows.keyOrNull('source', source) };
  const key = ledger.rows.keyOrNull('package', id);
  const done = ledger.acts.mustRun(
    'package.save',
    fields.name,
    tidy(input.why),
    (act) => ledger.rows.uidOf('package', putPackage(act, key, fields)),
    input.draft,
  );
  return { act: done.act.uid, id: done.value };
}

/** @throws Refused 'portion of another jar', 'not found', 'is a mistake', and as the rule book says */
export function savePortion(ledger: Ledger, input: Parsed<'portion.save'>): Reply<'portion.save'> {
  const { id, jar: jarUid, ...given } = tidy(input.portion);
  const jar = standingJar(ledger, jarUid);
  const key = ledger.rows.keyOrNull('portion', id);
  const old = key === null ? null : ledger.rows.get('portion', key);
  if (old !== null && old.jar !== jar.key) {
    throw new Refused('portion of another jar', { jar: jar.label });
  }
  const fields = { ...given, jar: jar.key };
  const done = ledger.acts.mustRun(
    'portion.save',
    `some of ${jar.label}`,
    tidy(input.why),
    (act) => {
      if (key !== null) changePortion(act, key, fields);
      return ledger.rows.uidOf('portion', key ?? addPortion(act, fields));
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

/** Drafts are no records: they leave no trace in the journal. @throws Refused 'invalid', 'unreadable' */
export function saveDraft(ledger: Ledger, { key, json }: Parsed<'draft.save'>): Reply<'draft.save'> {
  try {
    JSON.parse(json);
  } catch {
    throw new Refused('invalid', { path: 'json', problem: 'is not JSON' });
  }
  refuseUnreadable(key, 'key');
  refuseUnreadable(json, 'json');
  const { seconds, offset } = storedMoment(ledger.clock.now());
  ledger.rows
    .prepare(
      `INSERT INTO draft (key, json, saved_at, saved_at_off) VALUES (?, ?, ?, ?) ON CONFLICT (key)
       DO UPDATE SET json = excluded.json, saved_at = excluded.saved_at, saved_at_off = excluded.saved_at_off`,
    )
    .run(key, json, seconds, offset);
  return { savedAt: momentText(seconds, offset) };
}

export function dropDraft(ledger: Ledger, { key }: Parsed<'draft.drop'>): Reply<'draft.drop'> {
  ledger.rows.prepare('DELETE FROM draft WHERE key = ?').run(key);
  return {};
}

// Entries as the records of core/ledger/records.ts again: uids in place of keys.
import type { BatchReply } from '../../../core/contract';
import type { Hold, Package, Photograph, Portion, Source } from '../../../core/ledger/records';
import { answerOf } from '../../../core/safety/answer';
import { type HoldEntry, holdEntry } from '../entries/hold-entry';
import { jarEntry } from '../entries/jar-entry';
import { additionEntries, type PortionEntry, portionEntries, seedingEntries } from '../entries/kept-entries';
import type { Rooted } from '../entries/keyed';
import {
  type PackageEntry,
  type PhotographEntry,
  photographEntries,
  type SourceEntry,
} from '../entries/larder-entries';
import { remarksAbout } from '../derived/unread';
import { remarkReply } from './read-remarks';
import type { Ledger } from '../ledger';
import { outcomeOf } from '../entries/outcome-of-jar';
import { jarCautions, keptName, safetyReply, seedLabel, within } from './read-views';

export function sourceRecord({ key: _key, uid, ...fields }: Rooted<SourceEntry>): Source {
  return { id: uid, ...fields };
}

export function packageRecord(ledger: Ledger, row: Rooted<PackageEntry>): Package {
  const { key: _key, uid, source, ...fields } = row;
  return { id: uid, ...fields, source: ledger.rows.uidOrNull('source', source) };
}

/** A hold as a batch tells of it. @param asked the batch: a hold that was recorded by itself is of none */
export function holdRecord(ledger: Ledger, key: number, asked: number): Hold {
  const { key: _key, uid, batch, ...fields }: Rooted<HoldEntry> = holdEntry(ledger.rows, key);
  return { id: uid, ...fields, batch: ledger.rows.uidOf('batch', (batch as number | null) ?? asked) };
}

function portionRecord(ledger: Ledger, row: Rooted<PortionEntry>): Portion {
  const { key: _key, uid, jar, ...fields } = row;
  return { id: uid, ...fields, jar: ledger.rows.uidOf('jar', jar) };
}

export function photographRecord(ledger: Ledger, row: Rooted<PhotographEntry>): Photograph {
  const { key: _key, uid, jar, ...fields } = row;
  return { id: uid, ...fields, jar: ledger.rows.uidOf('jar', jar) };
}

/** A jar with all that belongs to it. */
export function jarRecord(ledger: Ledger, jarKey: number): BatchReply['jars'][number] {
  const { rows, index } = ledger;
  const { key, uid, batch, hold, milkPackage, ...fields } = jarEntry(rows, jarKey);
  const shares = index.family.has(key) ? index.family.sharesOf(key) : null;
  const outcome = outcomeOf(rows, key);
  return {
    label: index.jar(key).label,
    jar: {
      id: uid,
      ...fields,
      batch: rows.uidOf('batch', batch),
      hold: rows.uidOrNull('hold', hold),
      milkPackage: rows.uidOrNull('package', milkPackage),
    },
    additions: additionEntries(rows, key).map((row) => ({
      id: row.uid,
      jar: uid,
      name: row.name,
      planned: row.planned,
      actual: row.actual,
      package: rows.uidOrNull('package', row.package),
    })),
    seedings: seedingEntries(rows, key).map((row) => {
      const share = shares?.get(row.key);
      return {
        seeding: {
          id: row.uid,
          jar: uid,
          fromJar: rows.uidOrNull('jar', row.fromJar),
          portion: rows.uidOrNull('portion', row.portion),
          part: row.part,
          source: rows.uidOrNull('source', row.source),
          package: rows.uidOrNull('package', row.package),
          amount: row.amount,
        },
        label: seedLabel(ledger, row),
        kept: keptName(ledger, row.portion),
        share: share === undefined ? null : within(share),
        ...(rows.get('seeding', row.key).either === null ? {} : { unsure: true as const }),
      };
    }),
    discard: index.jar(key).safety.discard,
    caution: index.family.has(key) ? index.family.cautionLevelOf(key) : null,
    safety: index.family.has(key) ? safetyReply(answerOf(index.family, key)) : null,
    remarks: (remarksAbout(rows, [key], true).get(key) ?? []).map(remarkReply),
    cautions: jarCautions(ledger, key),
    outcome: outcome && { jar: uid, ...outcome },
    portions: portionEntries(rows, key).map((row) => portionRecord(ledger, row)),
    photographs: photographEntries(rows, key).map((row) => photographRecord(ledger, row)),
  };
}

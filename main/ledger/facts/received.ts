// What came in with a hand-over and says otherwise than ours: told, and decided by the keeper.
import type { Parsed, Reply } from '../../../core/contract';
import { tidy } from '../tidy-typed';
import { Refused } from '../../refusal';
import { formOfRow } from './hand-over';
import { decideReceived } from './merge';
import { nameOf } from './subject';
import type { FactHost } from './fact-host';

type Form = Reply<'received.list'>['received'][number]['ours'];

const differing = (one: Form, other: Form): string[] =>
  [...new Set([...Object.keys(one), ...Object.keys(other)])]
    .filter((name) => JSON.stringify(one[name] ?? null) !== JSON.stringify(other[name] ?? null))
    .toSorted();

/** Contradictions, those that wait before those that are decided, each in the order in which it came. */
export function listReceived({ facts, ...host }: FactHost): Reply<'received.list'> {
  const rows = facts
    .prepare(
      `SELECT t.key, r.uid, l.name FROM received t JOIN record r ON r.key = t.key JOIN ledger l ON l.key = t.from_ledger
        ORDER BY t.decided IS NOT NULL, t.key`,
    )
    .all() as { key: number; uid: string; name: string | null }[];
  return {
    received: rows.flatMap(({ key, uid, name }) => {
      const { about, form, decided } = facts.get('received', key);
      const record = facts.prepare('SELECT uid, gone_in FROM record WHERE key = ?').get(about) as {
        uid: string;
        gone_in: number | null;
      };
      // What is gone can't be set beside anything.
      if (record.gone_in !== null) return [];
      const kind = facts.kindOfKey(about);
      const [ours, theirs] = [formOfRow(facts, kind, about) as Form, JSON.parse(form) as Form];
      const says = nameOf({ facts, ...host }, kind, facts.columnsNow(kind, about) ?? {});
      return [
        {
          id: uid,
          record: record.uid,
          kind,
          says,
          differs: differing(ours, theirs),
          ours,
          theirs,
          from: name,
          decided,
        },
      ];
    }),
  };
}

/**
 * Keeps our form of a record, or takes over the one that came in.
 * @throws Refused 'not found', 'decided already', and as the rule book says
 */
export function decideOn(host: FactHost, input: Parsed<'received.decide'>): Reply<'received.decide'> {
  const { facts } = host;
  const key = facts.keyOf('received', input.id);
  const { about, decided } = facts.get('received', key);
  if (decided !== null) throw new Refused('decided already', { decided });
  const kind = facts.kindOfKey(about);
  const columns = facts.columnsNow(kind, about);
  if (!columns) throw new Refused('not found', { kind: 'record' });
  const done = host.mustRun(
    'received.decide',
    nameOf(host, kind, columns),
    tidy(input.why),
    (act) => decideReceived(facts, act, key, input.decided),
    input.draft,
  );
  return { act: done.act.uid };
}

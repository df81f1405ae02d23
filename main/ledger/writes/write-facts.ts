// Recording, correcting and taking away facts of any kind. One call is one act.
import type { Parsed, Reply } from '../../../core/contract';
import { type FactKind, fieldsOf } from '../../../core/ledger/facts/all-facts';
import { RECORDED, type RecordedKind, toInner } from '../../../core/ledger/facts/recorded-facts';
import { wrongIn } from '../../../core/ledger/facts/wrong';
import type { Made, OpenAct } from '../facts/open-act';
import { refuseBeside } from '../facts/beside';

import { nameOf, subjectOf } from '../facts/subject';
import { snake, type Stored, tableOf } from '../facts/tables';
import { type Named, storedFact } from '../facts/told';
import { addKnown } from '../derived/lifts';
import { Refused } from '../../refusal';
import { tidy } from '../tidy-typed';
import type { FactHost } from '../facts/fact-host';

type Fields = Readonly<Record<string, unknown>>;

/** What a fact is where nothing is said of a field. */
function whole<K extends FactKind>(kind: K, fact: Partial<Stored<K>>): Stored<K> {
  const given = fact as Fields;
  return Object.fromEntries(
    Object.entries(fieldsOf(kind)).map(([name, { leftOut }]) => [name, given[name] ?? leftOut ?? null]),
  ) as unknown as Stored<K>;
}

/**
 * Records facts, each of which may name an earlier one of the same call.
 * @throws Refused 'ref twice', 'no such ref', 'not found' and what refuseBeside refuses
 */
export function recordFacts(host: FactHost, input: Parsed<'facts.record'>): Reply<'facts.record'> {
  const entries = input.facts.map((entry) => {
    const { kind, ref, ...outer } = entry as Fields & { kind: RecordedKind; ref?: string };
    return { kind, ref, outer: tidy(outer) as Fields };
  });
  const subject = subjectOf(
    host,
    entries.map(({ kind, ref, outer }) => ({ kind, ref, fact: toInner(kind, outer) })),
  );
  const done = host.mustRun(
    'facts.record',
    subject,
    tidy(input.why),
    (act) => {
      const named = new Map<string, Made & { kind: FactKind }>();
      return entries.map(({ kind, ref, outer }) => {
        const made = insertFact(host, act, kind, outer, named);
        if (ref === undefined) return made.uid;
        if (named.has(ref)) throw new Refused('ref twice', { ref });
        named.set(ref, { ...made, kind });
        return made.uid;
      });
    },
    input.draft,
  );
  return { act: done.act.uid, ids: done.value };
}

/** What was typed may be nothing but spaces. @throws Refused 'invalid' */
function refuseEmpty(kind: FactKind, fact: Fields): void {
  for (const [name, { nullable }] of Object.entries(fieldsOf(kind))) {
    if (!nullable && (fact[name] === null || fact[name] === undefined))
      throw new Refused('invalid', { path: name, problem: 'is empty' });
  }
}

function insertFact(host: FactHost, act: OpenAct, kind: RecordedKind, outer: Fields, named: Named): Made {
  const fact = whole(kind, storedFact(host.facts, kind, outer, named));
  refuseEmpty(kind, fact as unknown as Fields);
  refuseBeside(host, kind, fact as unknown as Fields, null);
  if (kind !== 'lift') return act.insert(kind, fact);
  const { jar, ofJar } = fact as unknown as Stored<'lift'>;
  host.askLift(jar, ofJar);
  const lift = act.insert(kind, fact);
  addKnown(act, lift.key, ofJar);
  return lift;
}

/**
 * Changes fields of one fact.
 * @throws Refused 'not found', 'invalid', 'nothing changed' and what refuseBeside refuses
 */
export function correctFact(host: FactHost, input: Parsed<'facts.correct'>): Reply<'facts.correct'> {
  const { kind } = input;
  const key = host.facts.keyOf(kind, input.id);
  const changes = storedFact(host.facts, kind, tidy(input.changes) as Fields) as Fields;
  const now = host.facts.get(kind, key);
  const next = { ...now, ...changes } as Fields;
  refuseEmpty(kind, next);
  const wrong = wrongIn(kind, next);
  if (wrong) throw new Refused('invalid', { path: wrong.field, problem: wrong.problem });
  refuseBeside(host, kind, next, key);
  const subject = nameOf(host, kind, host.facts.columnsNow(kind, key) ?? {});
  const done = host.mustRun(
    'facts.correct',
    subject,
    tidy(input.why),
    (act) => {
      // Changed text is unread again; a new answer to it comes after.
      const unread = kind === 'remark' && changes.text !== undefined && changes.text !== (now as Fields).text;
      act.update(kind, key, { ...changes, ...(unread ? { readAs: null } : {}) } as Partial<
        Stored<typeof kind>
      >);
      if (unread && changes.readAs !== undefined)
        act.update('remark', key, { readAs: changes.readAs } as never);
    },
    input.draft,
  );
  return { act: done.act.uid };
}

/** What goes with a fact that is taken away: it would say nothing without it. */
const PARTS: Partial<Record<FactKind, readonly (readonly [FactKind, string])[]>> = {
  observation: [['acidity', 'observation'], ['sign', 'observation'], ['remark', 'observation']],
  remark: [['sign', 'remark']],
  hold: [['interruption', 'hold'], ['series', 'hold'], ['remark', 'hold']],
  portion: [['movement', 'portion'], ['remark', 'portion']],
  milk: [['use', 'milk']],
  addition: [['use', 'addition']],
  seeding: [['use', 'seeding'], ['remark', 'seeding']],
  trial: [['treatment', 'trial']],
  session: [['serving', 'session']],
  serving: [['mark', 'serving']],
  taster: [['tasterAvoids', 'taster']],
  reason: [['lift', 'reason']],
  lift: [['liftKnew', 'lift']],
}; // prettier-ignore

/** A fact and all its parts, parts first. */
function withParts(host: FactHost, kind: FactKind, key: number): { kind: FactKind; key: number }[] {
  const parts = (PARTS[kind] ?? []).flatMap(([part, column]) =>
    host.facts.where(part, column, key).flatMap((row) => withParts(host, part, row.key)),
  );
  return [...parts, { kind, key }];
}

/** Columns of all kinds that point at a kind. */
const pointingAt = (kind: FactKind): readonly (readonly [FactKind, string])[] =>
  [...RECORDED, 'choice' as const].flatMap((from) =>
    Object.entries(fieldsOf(from)).flatMap(([name, { as }]) =>
      as === kind ? [[from, snake(name)] as const] : [],
    ),
  );

/** @throws Refused 'hangs on it' */
function refuseHanging(host: FactHost, gone: readonly { kind: FactKind; key: number }[], what: string): void {
  const going = new Set(gone.map(({ key }) => key));
  for (const { kind, key } of gone) {
    for (const [from, column] of pointingAt(kind)) {
      const keys = host.facts
        .prepare(`SELECT key FROM ${tableOf(from)} WHERE ${column} = ?`)
        .pluck()
        .all(key) as number[];
      const left = keys.find((one) => !going.has(one));
      if (left === undefined) continue;
      const other = nameOf(host, from, host.facts.columnsNow(from, left) ?? {});
      throw new Refused('hangs on it', { what, other });
    }
  }
}

/**
 * Takes a fact away, with what is a part of it. Undo brings all of it back.
 * @throws Refused 'not found', 'hangs on it'
 */
export function removeFact(host: FactHost, input: Parsed<'facts.remove'>): Reply<'facts.remove'> {
  const { kind } = input;
  const key = host.facts.keyOf(kind, input.id);
  const gone = withParts(host, kind, key);
  const subject = nameOf(host, kind, host.facts.columnsNow(kind, key) ?? {});
  refuseHanging(host, gone, subject);
  const done = host.mustRun('facts.remove', subject, tidy(input.why), (act) => {
    for (const one of gone) act.remove(one.kind, one.key);
  });
  return { act: done.act.uid };
}

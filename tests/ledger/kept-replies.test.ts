// What 300 generated ledgers reply, held as it was when the ledger's tables were cut anew: whatever lies underneath, the
// same facts give the same judgement. Ids and keys are told by their order, since a ledger is free to count otherwise.
// To take over a reply that is meant to change: JARLINE_KEEP_REPLIES=1, and say in the commit which and why.
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { CallName, Input, Reply, Result } from '../../core/contract';
import { Generated } from './generated-ledgers';

const LEDGERS = 300;
const FILE = join(import.meta.dirname, 'kept-replies.json');
/** Where whole replies are written to, to look at a difference. */
const SEEN_IN = process.env.JARLINE_SEE_REPLIES;

type Hashes = Record<string, string>;

const UID = /[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}/g;
const KEYS = new Set(['key', 'ancestors', 'descendants']);

/** Replies of one ledger, in one order, as text. */
function repliesOf(ledger: Generated): Record<string, unknown> {
  const replies: Record<string, unknown> = {};
  const ask = <N extends CallName>(name: N, input: Input<N>, as = ''): Result<Reply<N>> => {
    const reply = ledger.ask(name, input);
    replies[`${name} ${as}`] = reply;
    return reply;
  };
  const family = ledger.ask('family.get', {});
  if (!family.ok) throw new Error(family.error.code);
  replies['family.get'] = family;
  ask('advice.next', {});
  ask('advice.restart', {});
  ask('advice.freshStart', {});
  for (const [at, { id }] of family.value.lines.entries()) {
    ask('judgement.line', { line: id }, String(at));
  }
  const batches = new Set<string>();
  for (const [at, { id }] of family.value.jars.entries()) {
    ask('judgement.jar', { jar: id }, String(at));
    const got = ask('jar.get', { id }, String(at));
    if (got.ok) batches.add(got.value.batch);
  }
  for (const [at, id] of [...batches].entries()) ask('batch.get', { id }, String(at));
  return replies;
}

/** The same with each id and key told by when it first came up. */
function namedByOrder(replies: Record<string, unknown>): Record<string, string> {
  const uids = new Map<string, string>();
  const keys = new Map<number, string>();
  const name = <T>(names: Map<T, string>, one: T): string => {
    const known = names.get(one) ?? `#${names.size}`;
    names.set(one, known);
    return known;
  };
  return Object.fromEntries(
    Object.entries(replies).map(([call, reply]) => {
      const text = JSON.stringify(reply, (field, value: unknown) =>
        KEYS.has(field) && typeof value === 'number'
          ? name(keys, value)
          : KEYS.has(field) && Array.isArray(value)
            ? value.map((one: number) => name(keys, one))
            : value,
      );
      return [call, text.replaceAll(UID, (uid) => name(uids, uid))];
    }),
  );
}

const short = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 12);

/** A hash for each kind of call of one ledger. */
function hashesOf(seed: number): Hashes {
  const texts = namedByOrder(repliesOf(new Generated(seed)));
  if (SEEN_IN !== undefined) {
    mkdirSync(SEEN_IN, { recursive: true });
    writeFileSync(join(SEEN_IN, `${seed}.txt`), Object.entries(texts).map((one) => one.join('\n')).join('\n')); // prettier-ignore
  }
  const byCall = new Map<string, string>();
  for (const [call, text] of Object.entries(texts)) {
    const [kind = ''] = call.split(' ');
    byCall.set(kind, `${byCall.get(kind) ?? ''}${call}\n${text}\n`);
  }
  return Object.fromEntries([...byCall].map(([kind, text]) => [kind, short(text)]));
}

const keeping = process.env.JARLINE_KEEP_REPLIES !== undefined;
/** Every tenth by default, to be quick; all where they are asked for, or kept anew. */
const EVERY = keeping || process.env.JARLINE_ALL_REPLIES !== undefined ? 1 : 10;

it(
  `generated ledgers reply byte for byte what they replied before (${LEDGERS / EVERY} of ${LEDGERS})`,
  { timeout: 600_000 },
  () => {
    const kept = keeping ? [] : (JSON.parse(readFileSync(FILE, 'utf8')) as Hashes[]);
    const now: Hashes[] = [];
    const different: string[] = [];
    for (let at = 0; at < LEDGERS; at += EVERY) {
      const hashes = hashesOf(at + 1);
      now.push(hashes);
      for (const call of Object.keys({ ...hashes, ...kept[at] })) {
        if (hashes[call] !== kept[at]?.[call]) different.push(`ledger ${at + 1}: ${call}`);
      }
    }
    if (keeping) writeFileSync(FILE, `[\n${now.map((one) => JSON.stringify(one)).join(',\n')}\n]\n`);
    else {
      expect(different).toEqual([]);
      expect(kept.length).toBe(LEDGERS);
    }
  },
);

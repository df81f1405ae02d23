// What a fact is called where an act is told: "observation, pH and sign of 14 Mar a", "stays of 14 Mar a, b".
import { type FactKind, fieldsOf, isRef } from '../../../core/ledger/facts/all-facts';
import { KIND_WORDS } from './fact-rows';
import type { Columns } from './tables';
import { snake } from './tables';
import type { FactHost } from './fact-host';

type Given = Readonly<Record<string, unknown>>;

/** A fact of a call, before it is stored: fields by their own names, references as text. */
export interface Pending {
  readonly kind: FactKind;
  readonly ref: string | undefined;
  readonly fact: Given;
}

/** References that lead from a fact to the jar it is about, the nearest first. */
const TO_THE_JAR: readonly FactKind[] = [
  'jar', 'portion', 'observation', 'seeding', 'milk', 'addition', 'remark', 'photograph', 'serving', 'lift',
]; // prettier-ignore

/** The key of the jar that a stored record is about, or null. */
function jarBehind(host: FactHost, kind: FactKind, key: number): number | null {
  if (kind === 'jar') return key;
  const row = host.facts.columnsNow(kind, key);
  return row ? jarIn(host, kind, row) : null;
}

/** The key of the jar that a row is about, or null. */
function jarIn(host: FactHost, kind: FactKind, row: Columns): number | null {
  for (const [name, { as }] of Object.entries(fieldsOf(kind))) {
    const key = row[snake(name)];
    if (typeof key !== 'number' || !TO_THE_JAR.includes(as as FactKind)) continue;
    const jar = jarBehind(host, as as FactKind, key);
    if (jar !== null) return jar;
  }
  return null;
}

function jarOfPending(host: FactHost, pending: Pending, all: readonly Pending[]): number | null {
  for (const [name, { as }] of Object.entries(fieldsOf(pending.kind))) {
    const value = pending.fact[name];
    if (typeof value !== 'string' || !isRef(as) || !TO_THE_JAR.includes(as as FactKind)) continue;
    const here = all.find(({ ref }) => ref === value);
    if (here === pending) continue;
    const found = here ? null : host.facts.recordOf(value);
    const jar = here ? jarOfPending(host, here, all) : found ? jarBehind(host, found.kind, found.key) : null;
    if (jar !== null) return jar;
  }
  return null;
}

const SHOWN = 5;
const listed = (names: readonly string[]): string =>
  names.length > SHOWN
    ? `${names.slice(0, SHOWN).join(', ')} and ${names.length - SHOWN} more`
    : names.join(', ').replace(/, ([^,]*)$/, ' and $1');

/** Several facts in one phrase. */
export function subjectOf(host: FactHost, facts: readonly Pending[]): string {
  const kinds = [...new Set(facts.map(({ kind, fact }) => ownName(kind, fact)))];
  const jars = new Set(facts.map((pending) => jarOfPending(host, pending, facts)));
  const labels = [...jars].flatMap((jar) => (jar === null ? [] : [host.labelOf(jar)]));
  return labels.length === 0 ? listed(kinds) : `${listed(kinds)} of ${listed(labels)}`;
}

/** "appliance Warm box"; a name that says what it is stands alone: "taster A". */
function ownName(kind: FactKind, fact: Given): string {
  const word = KIND_WORDS[kind];
  if (typeof fact.name !== 'string' || kind === 'treatment') return word;
  return fact.name.toLowerCase().startsWith(word) ? fact.name : `${word} ${fact.name}`;
}

/** One stored fact in one phrase. */
export function nameOf(host: FactHost, kind: FactKind, row: Columns): string {
  const jar = jarIn(host, kind, row);
  const own = ownName(kind, row);
  return jar === null ? own : `${own} of ${host.labelOf(jar)}`;
}

// Archives and hand-overs that are not as they were written: bytes turned over, cut short, lines said otherwise, with the
// hashes made to fit. Each is refused with a sentence and changes nothing, or is a whole ledger after all.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { READS } from '../../core/call-names';
import { contract } from '../../core/contract';
import { filesIn, sourceOf, unpackFile, zipOf } from '../../main/files/zip';
import type { Ledger } from '../../main/ledger/ledger';
import { askOf, emptyBeside, valueOf } from '../archive/bare-calls';
import { everyKind } from '../archive/every-kind';
import { seededNumbers } from '../families';
import { must, newFolder } from '../ledger/ledger-files';
import { type Below, judged, type Tally } from './judge-case';

type Bytes = Uint8Array<ArrayBuffer>;

/** What programs send that mean no harm, or do. */
const NASTY: readonly unknown[] = [
  null, 0, -1, Infinity, 2 ** 53, 1e308, 4.9e-324, 0.1, '', ' ', 'x'.repeat(20_000), '\u0000', '\ud800', '\u202e', '=1+1', "'; DROP TABLE jar; --",
  '<img src=x onerror=alert(1)>', '../../etc/passwd', '__proto__', [], {}, true, '2026-02-30', '9999-12-31', '2026-03-14T99:00:00Z',
  '019ced65-d5c0-7000-a1d5-d8f7c8caa890', 'made', 'planned', 'mistake', [[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]],
]; // prettier-ignore

/** A value with one thing in it said otherwise, left out, said twice or moved. */
export function spoil(value: unknown, below: Below): unknown {
  const copy: unknown = structuredClone(value);
  let at = copy as Record<string, unknown> | unknown[];
  for (let depth = 0; depth < 12; depth += 1) {
    const keys = Object.keys(at);
    const key = keys[below(keys.length)];
    if (key === undefined) return NASTY[below(NASTY.length)];
    const holder = at as Record<string, unknown>;
    const inner = holder[key];
    if (typeof inner === 'object' && inner !== null && below(5) > 0) {
      at = inner as typeof at;
      continue;
    }
    const how = below(6);
    const other = keys[below(keys.length)] ?? key;
    if (how === 0 && Array.isArray(at)) at.splice(Number(key), 1);
    else if (how === 0) delete holder[key];
    else if (how === 1 && Array.isArray(at)) at.push(inner);
    else if (how === 2) holder[key] = holder[other];
    else if (how === 3 && typeof inner === 'number') holder[key] = inner + below(3) - 1;
    else holder[key] = NASTY[below(NASTY.length)];
    return copy;
  }
  return copy;
}

/** Bytes turned over, taken out, or cut. */
export function scratch(bytes: Uint8Array, below: Below): Bytes {
  const copy = Uint8Array.from(bytes);
  const how = below(4);
  if (how === 0) return copy.slice(0, below(copy.length));
  if (how === 1)
    return Uint8Array.from([...copy.subarray(0, below(copy.length)), ...copy.subarray(below(copy.length))]);
  for (let times = 1 + below(8); times > 0; times -= 1) copy[below(copy.length)] = below(256);
  return copy;
}

const encode = (text: string): Bytes => new TextEncoder().encode(text);
const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
/** JSON with numbers that JSON can say and no program can hold. */
const json = (value: unknown): string => JSON.stringify(value, (_key, one: unknown) => (one === Infinity ? '1e400!' : one)).replaceAll('"1e400!"', '1e400'); // prettier-ignore

interface Unpacked {
  readonly name: string;
  readonly data: Uint8Array;
  readonly sha256: string;
}
const hashOf = (data: Uint8Array): string => createHash('sha256').update(data).digest('hex');

function unpacked(archive: Uint8Array): Unpacked[] {
  const source = sourceOf(archive);
  return filesIn(source).map((file) => {
    const data = unpackFile(source, file, 1e8);
    return { name: textOf(file.name), data, sha256: hashOf(data) };
  });
}

/** An archive whose lines say otherwise, whole to look at: the hashes are made to fit. */
function otherwise(whole: readonly Unpacked[], below: Below): Bytes {
  const files = new Map(whole.map((one) => [one.name, one]));
  const lines = whole.filter(({ name }) => name.endsWith('.jsonl'));
  for (let times = 1 + below(2); times > 0; times -= 1) {
    const { name = '' } = lines[below(lines.length)] ?? {};
    const text = textOf(files.get(name)?.data ?? new Uint8Array())
      .split('\n')
      .slice(0, -1);
    const at = below(text.length);
    // The last of its lines may be gone.
    if (!text[at]) continue;
    text[at] = json(spoil(JSON.parse(text[at]), below));
    if (below(8) === 0) text.splice(at, 1);
    const data = encode(`${text.join('\n')}\n`);
    files.set(name, { name, data, sha256: hashOf(data) });
  }
  const told = JSON.parse(textOf(files.get('archive.json')?.data ?? new Uint8Array())) as { files: { name: string; bytes: number; sha256: string }[] }; // prettier-ignore
  for (const one of told.files) {
    const file = files.get(one.name);
    if (file) Object.assign(one, { bytes: file.data.length, sha256: file.sha256 });
  }
  const data = encode(json(below(10) === 0 ? spoil(told, below) : told));
  files.set('archive.json', { name: 'archive.json', data, sha256: '' });
  return Uint8Array.from(zipOf([...files.values()].map((file) => [encode(file.name), file.data]), 'stored')); // prettier-ignore
}

/** Brings one file in. @throws Error with what is wrong where it is neither refused in order nor whole */
function tryOne(ledger: Ledger, name: 'archive.read' | 'handOver.read', bytes: Bytes, tally: Tally): boolean {
  const result = judged(ledger, tally, () => askOf(ledger)(name, { file: { name: 'a file', bytes } }));
  if (!result.ok) return false;
  for (const read of READS) {
    if (read === 'app.state' || !contract[read].input.safeParse({}).success) continue;
    const reply = contract[read].reply.safeParse(valueOf(askOf(ledger)(read, {})));
    if (!reply.success)
      throw new Error(`${read} can’t be answered any more: ${reply.error.message.slice(0, 500)}`);
  }
  return true;
}

/**
 * Tries so many mutated files at one door.
 * @param from number of the first case: the same number is the same case
 * @throws Error naming the case
 */
export function tryMutated(door: 'archive' | 'hand-over', cases: number, from = 1): Tally {
  const session = everyKind();
  const path = join(newFolder(), 'out');
  if (door === 'archive') must(session, 'archive.write', { file: { path } });
  else {
    const jar = must(session, 'family.get', {}).jars.at(-1)?.id ?? '';
    must(session, 'handOver.write', { jar, file: { path }, followUp: true, include: ['private remarks'] });
  }
  const whole = readFileSync(path);
  const files = door === 'archive' ? unpacked(whole) : [];
  const tally: Tally = { refused: 0, taken: 0, slowest: 0 };
  let ledger = emptyBeside(session.ledger);
  for (let at = from; at < from + cases; at += 1) {
    const random = seededNumbers(at);
    const below: Below = (most) => Math.floor(random() * most);
    const bytes =
      below(4) === 0 ? scratch(whole, below)
      : door === 'archive' ? otherwise(files, below)
      : encode(json(spoil(JSON.parse(textOf(whole)), below))); // prettier-ignore
    try {
      if (tryOne(ledger, door === 'archive' ? 'archive.read' : 'handOver.read', bytes, tally)) {
        ledger.close();
        ledger = emptyBeside(session.ledger);
      }
    } catch (error) {
      const said = error instanceof Error ? (error.stack ?? '') : String(error);
      throw new Error(`case ${at} of ${door}: ${said}`, { cause: error });
    }
  }
  ledger.close();
  session.close();
  return tally;
}

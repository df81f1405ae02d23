// The archive of a whole ledger, version 1: which files it holds and what each of their lines is. Pure. Facts are told as
// everywhere outside (core/ledger/facts), others by their ids and unknowns left out; around them lie the acts, the records'
// own story and every form that was changed, so that nothing is lost and undo still works. core/archive/archive-read-me.ts tells
// the same to whoever has no program for it; core/schemas/archive-1.json is what these schemas say.
import { z } from 'zod';
import { Line, Moment, Uid } from '../ledger/basics';
import { FACT_KINDS, type FactKind, FACTS } from '../ledger/facts/all-facts';

export const ARCHIVE_FORMAT = 'jarline archive';
/** Raised when an older program could not read what a newer one writes. */
export const ARCHIVE_VERSION = 1;

const no = z.int().min(1).max(Number.MAX_SAFE_INTEGER);
const kind = z.enum(FACT_KINDS);
const Sha = z.string().regex(/^[0-9a-f]{64}$/, { message: 'this is not a hash of SHA-256' });
const celsius = z.number().min(-90).max(150);

/** Enough to know what it is before the rest is believed. */
export const ArchiveHead = z.looseObject({ format: z.literal(ARCHIVE_FORMAT), version: z.int().min(1) });

/** archive.json: every other file with its length and hash. */
export const Contents = z.strictObject({
  format: z.literal(ARCHIVE_FORMAT),
  version: z.literal(ARCHIVE_VERSION),
  files: z
    .array(z.strictObject({ name: z.string().max(200), bytes: z.int().nonnegative(), sha256: Sha }))
    .max(1_000_000),
});
export type Contents = z.infer<typeof Contents>;

/** A fact of each kind, with its id; what is unknown is left out. A series names its readings by their hash. */
const factLine = (of: FactKind): z.ZodObject => {
  const shape = of === 'series' ? FACTS[of].extend({ block: Sha.nullable().default(null) }) : FACTS[of];
  return shape.extend({ id: Uid });
};
export const FACT_LINES = Object.fromEntries(FACT_KINDS.map((of) => [of, factLine(of)])) as {
  readonly [K in FactKind]: z.ZodObject;
};

/** What a line of each other file is. `no` is its number in the ledger it comes from: in that order it was entered. */
export const LINES = {
  /** This ledger (`own`), and those whose records came here by hand-over. */
  ledgers: z.strictObject({ no, id: Uid, own: z.boolean(), demo: z.boolean(), name: Line.min(1).optional(), madeAt: Moment }),
  /** Everything that was done. `undoes`: the acts that it took back, the newest first. */
  acts: z.strictObject({
    no, id: Uid, kind: z.string().min(1).max(100), at: Moment, subject: z.string().max(500),
    why: z.string().min(1).max(10_000).optional(), undoes: z.array(Uid).min(1).max(10_000).optional(), ledger: Uid.optional(),
  }),
  /** The story of each record, also of those that are gone: who made it, where it comes from, its form's number, who ended it. */
  records: z.strictObject({
    no, id: Uid, kind, madeIn: Uid, home: Uid.optional(), homeForm: no.optional(), form: no, goneIn: Uid.optional(),
  }),
  /** Readings of probes, once for each hash. `follows`: they go on from that one. */
  readings: z.strictObject({
    no, sha256: Sha, count: no, follows: Sha.optional(),
    readings: z.array(z.strictObject({ no, at: Moment, c: celsius, leftOut: z.literal(true).optional() })).max(1_000_000),
  }),
  /** What acts changed, took away or brought back, in order: the form before, as a line of facts without its id. */
  steps: z.strictObject({
    no, act: Uid, record: Uid, did: z.enum(['change', 'take', 'back']),
    before: z.record(z.string().max(50), z.unknown()).optional(), homeForm: no.optional(),
  }),
  /** What was begun and not recorded yet. */
  drafts: z.strictObject({ key: z.string().min(1).max(100), json: z.string().max(1_000_000), savedAt: Moment }),
} as const; // prettier-ignore
export type LineKind = keyof typeof LINES;
export type ArchiveLine<K extends LineKind> = z.infer<(typeof LINES)[K]>;

/** Files of lines, in the order in which one can point at another; a long one goes on in `…-2.jsonl`. */
const LINE_FILES: readonly string[] = [
  'ledgers', 'acts', 'records', 'readings', ...FACT_KINDS.map((of) => `facts/${of}`), 'steps', 'drafts',
]; // prettier-ignore

export const CONTENTS_FILE = 'archive.json';
export const photographFile = (sha: string): string => `photographs/${sha}.jpg`;

export interface NamedFile {
  /** One of LINE_FILES, 'photograph', or 'other' for what is there to be read by people. */
  readonly of: string;
  /** Of lines: 1 for the first file of its kind. Of a photograph: 0. */
  readonly part: number;
}

/** What a file of an archive is by its name; null for a name that an archive has not. */
export function fileNamed(name: string): NamedFile | null {
  if (name === 'README.txt' || name === 'schema.json') return { of: 'other', part: 0 };
  if (/^photographs\/[0-9a-f]{64}\.jpg$/.test(name)) return { of: 'photograph', part: 0 };
  const [, of, part] = /^([a-zA-Z/]+)(?:-([1-9]\d{0,5}))?\.jsonl$/.exec(name) ?? [];
  return of !== undefined && LINE_FILES.includes(of) ? { of, part: Number(part ?? 1) } : null;
}

export const lineFile = (of: string, part: number): string =>
  part === 1 ? `${of}.jsonl` : `${of}-${part}.jsonl`;

/** Lists within lists deeper than anything that is kept here. */
const MOST_DEPTH = 20;

/** Whether JSON text is no deeper than anything that is kept here: asked before it is read. */
export function isShallow(json: string): boolean {
  let depth = 0;
  let quoted = false;
  for (let at = 0; at < json.length; at += 1) {
    const code = json.charCodeAt(at);
    if (quoted) {
      if (code === 0x5c) at += 1;
      else if (code === 0x22) quoted = false;
    } else if (code === 0x22) quoted = true;
    else if (code === 0x5b || code === 0x7b) {
      depth += 1;
      if (depth > MOST_DEPTH) return false;
    } else if (code === 0x5d || code === 0x7d) depth -= 1;
  }
  return true;
}

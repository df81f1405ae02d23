// Writes one jar with its ancestry as a hand-over (core/hand-over/hand-over-format.ts). Whom it went to is kept here and never
// in the file.
import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Parsed, Reply } from '../../core/contract';
import {
  HAND_OVER_FORMAT,
  HAND_OVER_VERSION,
  type HandOver,
  MOST_HAND_OVER,
  MOST_HANDED,
} from '../../core/hand-over/hand-over-format';
import { safetyOf } from '../../core/lineage/touch';
import { handOver } from '../ledger/facts/hand-over';
import { chosenPath } from '../files/chosen-path';
import { putFile } from '../ledger/put-file';
import { remarksAbout } from '../ledger/derived/unread';
import type { Job } from '../ledger/job';
import type { KnownJar } from '../ledger/family-index';
import type { Ledger } from '../ledger/ledger';
import { familyMember } from '../ledger/reads/read-views';
import { Refused } from '../refusal';
import { tidy } from '../ledger/tidy-typed';
import { aboutJar } from './about-jar';

/** Remarks that are about one jar, its batch or its hold, by how they were read. */
const READ_AS = `
  SELECT DISTINCT r.text FROM remark r
    LEFT JOIN observation o ON o.key = r.observation LEFT JOIN portion p ON p.key = r.portion
    LEFT JOIN photograph f ON f.key = r.photograph LEFT JOIN seeding d ON d.key = r.seeding
    LEFT JOIN jar j ON j.batch = r.batch LEFT JOIN stay s ON s.hold = r.hold
   WHERE r.read_as = 'discard' AND coalesce(r.jar, o.jar, p.jar, f.jar, d.jar, j.key, s.jar) = ?`;

const quoted = (text: string): string => text.replaceAll(/\s+/g, ' ').trim().slice(0, 200);

/**
 * A jar goes only with its remarks answered: what nobody has read may be what speaks against it. Further up, what a plain word
 * of spoilage stands in.
 * @throws Refused 'remark unread', 'remark discards', 'spoiled not given'
 */
function refuseUnanswered(
  ledger: Ledger,
  jar: KnownJar,
  ancestors: readonly number[],
  followUp: boolean,
): number {
  const remarks = remarksAbout(ledger.rows, [jar.key, ...ancestors], false);
  const unread = (key: number) => (remarks.get(key) ?? []).filter(({ readAs }) => readAs === null);
  const [own] = unread(jar.key);
  if (own) throw new Refused('remark unread', { jar: jar.label, text: quoted(own.text) });
  let before = 0;
  for (const key of ancestors) {
    const open = unread(key);
    const tells = open.find(({ stops }) => stops);
    if (tells)
      throw new Refused('remark unread', { jar: ledger.index.jar(key).label, text: quoted(tells.text) });
    before += open.length;
  }
  if (followUp) return before;
  const discards = ledger.rows.prepare(READ_AS).pluck().get(jar.key);
  if (typeof discards === 'string')
    throw new Refused('remark discards', { jar: jar.label, text: quoted(discards) });
  if (safetyOf(ledger.index.family.jar(jar.key)).discard !== null)
    throw new Refused('spoiled not given', { jar: jar.label });
  return before;
}

/** Spoiled jars outside an ancestry that cautions in it rest on. */
function stubsOf({ index }: Ledger, going: readonly number[]): Set<number> {
  const own = new Set(going);
  const stubs = going.flatMap((key) => index.family.cautionsOf(key).map(({ of }) => of));
  return new Set(stubs.filter((of) => !own.has(of)));
}

type Asked = Pick<Parsed<'handOver.write'>, 'include' | 'followUp'>;

function handOverOf(ledger: Ledger, jar: KnownJar, input: Asked): HandOver {
  const ancestors = ledger.index.family.ancestorsOf(jar.key);
  const unreadBefore = refuseUnanswered(ledger, jar, ancestors, input.followUp);
  const stubs = stubsOf(ledger, [jar.key, ...ancestors]);
  const privateToo = input.include.includes('private remarks');
  const { records } = handOver(ledger.rows, jar.key, { stubs, privateToo });
  if (records.length > MOST_HANDED) throw new Refused('hand-over too large');
  return {
    format: HAND_OVER_FORMAT,
    version: HAND_OVER_VERSION,
    id: ledger.newId(),
    ledger: { id: ledger.about.uid, demo: ledger.about.demo },
    jar: jar.uid,
    about: { ...aboutJar(ledger, jar), unreadBefore },
    records: records.map(({ uid, ...one }) => ({ id: uid, ...one })) as HandOver['records'],
  };
}

/**
 * Writes a hand-over. Where it is said whom the jar goes to, that it was given is recorded, with the name as the act's reason:
 * the keeper's alone, so that a later caution can say whom to tell.
 * @throws Refused 'not found', 'only planned', 'is a mistake', 'remark unread', 'remark discards', 'spoiled not given', 'file exists'
 */
export function writeHandOver(
  ledger: Ledger,
  input: Parsed<'handOver.write'>,
  job: Job,
): Reply<'handOver.write'> {
  job.step(0, null, 'gathering the ancestry');
  const jar = familyMember(ledger, input.jar);
  const made = handOverOf(ledger, jar, input);
  const bytes = new TextEncoder().encode(`${JSON.stringify(made, null, 1)}\n`);
  if (bytes.length > MOST_HAND_OVER) throw new Refused('hand-over too large');
  const file = resolve(chosenPath(input.file, 'handOver.write'));
  const to = tidy(input.to);
  putFile(file, bytes);
  let act: string | null = null;
  try {
    if (to !== null)
      act = ledger.acts.mustRun('handOver.write', jar.label, to, (open) =>
        open.insert('movement', {
          jar: jar.key,
          kind: 'given',
          day: ledger.clock.today(),
          amount: input.amount,
          handOver: made.id,
        }),
      ).act.uid;
  } catch (error) {
    // A file that nobody knows of would go without its caution.
    rmSync(file, { force: true });
    throw error;
  }
  const jars = made.records.filter(({ kind }) => kind === 'jar').length;
  return {
    id: made.id,
    file,
    bytes: bytes.length,
    records: made.records.length,
    jars,
    act,
    about: made.about,
  };
}

/**
 * What a hand-over would tell.
 * @throws Refused as writeHandOver
 */
export function aboutHandOver(
  ledger: Ledger,
  { jar, include }: Parsed<'handOver.about'>,
): Reply<'handOver.about'> {
  const { about, records } = handOverOf(ledger, familyMember(ledger, jar), { include, followUp: false });
  return { about, records: records.length, jars: records.filter(({ kind }) => kind === 'jar').length };
}

/** Jars that were given with a hand-over, the newest first, with whom to tell and what stands on them now. */
export function listHandOvers(ledger: Ledger): Reply<'handOver.list'> {
  const { rows, index } = ledger;
  const found = rows
    .prepare(
      `SELECT m.hand_over AS id, m.jar, m.day, a.why AS who FROM movement m JOIN record r ON r.key = m.key JOIN act a ON a.key = r.made_in
        WHERE m.hand_over IS NOT NULL AND m.jar IS NOT NULL ORDER BY m.key DESC`,
    )
    .all() as { id: string; jar: number; day: string | null; who: string | null }[];
  return {
    handOvers: found.map(({ id, jar, day, who }) => {
      const { uid, label } = index.jar(jar);
      const known = index.family.has(jar);
      const discard = known ? safetyOf(index.family.jar(jar)).discard : null;
      return {
        id,
        jar: uid,
        label,
        on: day,
        to: who,
        discard,
        caution: known ? index.family.cautionLevelOf(jar) : null,
      };
    }),
  };
}

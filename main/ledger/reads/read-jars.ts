// Reads of one jar, and finding a jar by what a keeper types of its label.
import { earliestDay } from '../../../core/lineage/lineage-shapes';
import type { Parsed, Reply } from '../../../core/contract';
import type { Amount } from '../../../core/ledger/basics';
import { piecesLeft, portionName } from '../../../core/ledger/portions';
import { lineageFigures } from '../../../core/lineage/figures-with-why';
import { daysInWords, findJars, lineWords, namerOf } from '../../../core/lineage/labels';
import { readShortCode, shortCode } from '../../../core/lineage/short-codes';
import { answerOf } from '../../../core/safety/answer';
import { discardWord } from '../../../core/says/safety-says';
import { wayBack } from '../../../core/says/way-to-source';
import { portionEntries } from '../entries/kept-entries';
import type { KnownJar } from '../family-index';
import { remarksAbout } from '../derived/unread';
import type { Ledger } from '../ledger';
import { emptyJars, leftIn } from '../entries/left-of-rows';
import { holdRecord, jarRecord } from './read-records';
import { familyMember, jarCautions, jarViews, lineNames, safetyReply } from './read-views';

/** The nearest so many are listed of what a jar descends from, and of what descends from it: opening one costs no more. */
const LISTED_AT_MOST = 2000;

export function getJar(ledger: Ledger, { id }: Parsed<'jar.get'>): Reply<'jar.get'> {
  const { index, rows } = ledger;
  const { family } = index;
  const jar = familyMember(ledger, id);
  const { key } = jar;
  const named = (one: number): { key: number; id: string; label: string } => {
    const { uid, label } = index.jar(one);
    return { key: one, id: uid, label };
  };
  const [view] = jarViews(ledger, [key]);
  if (!view) throw new Error(`no view of jar ${key}`);
  const siblings = (rows.prepare('SELECT key FROM jar WHERE batch = ? ORDER BY letter, key').pluck().all(jar.batch) as number[])
    .filter((one) => one !== key && family.has(one)); // prettier-ignore
  return {
    view,
    batch: rows.uidOf('batch', jar.batch),
    cautions: jarCautions(ledger, key),
    wayBack: wayBack(family, key),
    ancestors: family.ancestorsOf(key, LISTED_AT_MOST),
    descendants: family.descendantsOf(key, LISTED_AT_MOST),
    children: family.childrenOf(key).map(named),
    siblings: siblings.map(named),
    madeBetween: jar.madeBetween,
    figures: lineageFigures(family, key),
    record: jarRecord(ledger, key),
    hold: jar.hold === null ? null : holdRecord(ledger, jar.hold, jar.batch),
  };
}

const betweenWords = ({ madeBetween: range }: KnownJar): string | null =>
  range && `made between ${daysInWords(range.from)} and ${daysInWords(range.to)}`;

/** Which lines a jar is of; null in a ledger of one. */
function linesSaid(ledger: Ledger, jar: number): string | null {
  const { family } = ledger.index;
  const lines = family.lines.length > 1 ? family.linesOf(jar) : [];
  return lines.map(lineNames(ledger)).map(lineWords).join(' and ') || null;
}

/** What tells a found jar apart at a glance. */
function saysOf(ledger: Ledger, jar: KnownJar, empty: boolean): string {
  const { family } = ledger.index;
  const generation = family.generationOf(jar.key);
  return [
    `generation ${generation.atLeast ? 'at least ' : ''}${generation.deepest}`,
    linesSaid(ledger, jar.key),
    [jar.state === 'lost' ? 'stands for a jar nobody can name' : null, betweenWords(jar)]
      .filter(Boolean)
      .join(', ') || null,
    jar.safety.discard === null ? jar.setWord : discardWord(jar.safety.discard).toLowerCase(),
    jar.additions.length > 0 ? `with ${jar.additions.join(', ')}` : null,
    jar.onShelf === false || empty ? 'gone' : null,
  ]
    .filter((part) => part !== null)
    .join(' · ');
}

type KeptOf = Reply<'jar.find'>['jars'][number]['portions'];

/** What is kept apart of a jar and still exists: none that is gone, or whose pieces were all used. */
function keptOf({ rows, index }: Ledger, jar: number): KeptOf {
  return portionEntries(rows, jar).flatMap((portion): KeptOf => {
    if (portion.goneOn !== null || leftIn(rows, 'portion', portion.key).none) return [];
    const taken = rows.where('seeding', 'portion', portion.key);
    const left = piecesLeft(
      portion,
      taken.map(({ actual }): Amount | null => actual),
    );
    if (left === 0) return [];
    const name = portionName(portion);
    const how =
      left !== null
        ? `${left} left`
        : portion.pieces !== null
          ? `${portion.pieces} kept, some used`
          : taken.length > 0
            ? 'used before'
            : null;
    const answer = answerOf(index.family, jar, { on: portion.keptOn });
    return [
      {
        id: portion.uid,
        name,
        says: how === null ? name : `${name}, ${how}`,
        part: portion.part,
        pieces: portion.pieces !== null,
        caution: answer.level,
        safety: safetyReply(answer),
      },
    ];
  });
}

/** Why a jar that was named in full is not among those that may have seeded. */
function whyNotOffered(jar: KnownJar, notAfter: string | null): string {
  if (jar.state === 'planned') return 'Only planned, so it can’t have seeded anything yet.';
  if (jar.state === 'not made') return 'Planned, but not made, so it can’t have seeded anything.';
  const made = earliestDay(jar);
  if (notAfter !== null && made !== null && made > notAfter)
    return 'Made after this batch, so it can’t have seeded it.';
  return 'A jar is called so. Type its label as it stands here to pick it.';
}

/** Newest first among those that fit equally well; planned jars and mistakes are never offered. */
export function findJar(ledger: Ledger, { text, limit, notAfter }: Parsed<'jar.find'>): Reply<'jar.find'> {
  const { family, jars } = ledger.index;
  const offered = [...jars.values()].filter((jar) => family.has(jar.key));
  const isNamed = namerOf(text, ledger.preferences.dates);
  const code = readShortCode(text);
  const coded = code === null ? [] : offered.filter(({ uid }) => shortCode(uid) === code);
  const found =
    coded.length > 0 ? coded : findJars(offered, text, { dates: ledger.preferences.dates, limit, notAfter });
  const named =
    found.find(isNamed) ?? [...jars.values()].find((jar) => jar.state !== 'mistake' && isNamed(jar));
  // A text that names a jar means no other: “1 Apr c” is not also part of “11 Apr c”.
  const listed = named ? found.filter(isNamed) : found;
  const remarks = remarksAbout(
    ledger.rows,
    listed.map(({ key }) => key),
    true,
  );
  const empty = emptyJars(
    ledger.rows,
    listed.map(({ key }) => key),
  );
  return {
    jars: listed.map((jar) => ({
      key: jar.key,
      id: jar.uid,
      label: jar.label,
      madeOn: jar.madeOn,
      madeBetween: jar.madeBetween,
      generation: family.generationOf(jar.key).deepest,
      says: saysOf(ledger, jar, empty.has(jar.key)),
      caution: family.cautionLevelOf(jar.key),
      safety: safetyReply(answerOf(family, jar.key)),
      quotes: (remarks.get(jar.key) ?? []).flatMap(({ of, text, readAs }) =>
        readAs === null ? [{ of, text }] : [],
      ),
      portions: keptOf(ledger, jar.key),
    })),
    named: named ? { id: named.uid, label: named.label, says: whyNotOffered(named, notAfter) } : null,
  };
}

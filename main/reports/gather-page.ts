// What the page of a whole ledger, or of a line, tells of each jar. What is private stays out unless it was asked for.
import { madeWords } from '../../core/says/hand-over-says';
import { shortCode } from '../../core/lineage/short-codes';
import { dayInOrder } from '../../core/lineage/lineage-shapes';
import { printAmount } from '../../core/quantities/quantities';
import { anchorOf, type LedgerPage, type PageJar, type PageLine } from '../../core/reports/ledger-page';
import { discardWords, pageIntro, verdictForOthers } from '../../core/says/report-says';
import { type AskReport, MOST_PAGE_PHOTOGRAPHS, MOST_SMALL_PHOTOGRAPH } from '../../core/shapes/report-calls';
import { readJpeg } from '../ledger/jpeg';
import type { KnownJar } from '../ledger/family-index';
import type { Ledger } from '../ledger/ledger';
import { judgeOneLine, lineAdvice } from '../ledger/reads/read-judgement';
import { jarRecord } from '../ledger/reads/read-records';
import { jarCautions, lineNames } from '../ledger/reads/read-views';
import { Refused } from '../refusal';
import { drawnFamily, keysOfPart, lineBatch } from './drawn-family';
import { factsOfLine, todayWords } from './gather-line';

type AskPage = Extract<AskReport, { of: 'page' }>;

/** How many jars are told: a page of more is none that a telephone opens. */
const MOST_JARS = 1500;

/** Jars of the page, the newest first. */
function jarsOf(ledger: Ledger, line: string | null): KnownJar[] {
  const keys = keysOfPart(ledger, line === null ? { part: 'all' } : { part: 'line', line });
  return keys
    .map((key) => ledger.index.jar(key))
    .toSorted((a, b) => (dayInOrder(b) ?? '').localeCompare(dayInOrder(a) ?? '') || b.key - a.key);
}

/** Photographs of some jars by jar, the newest jar's first. */
function photographsOf({ rows }: Ledger, jars: readonly KnownJar[]): Map<number, { id: string; sha256: string }[]> {
  const all = rows
    .prepare('SELECT f.jar, r.uid AS id, f.sha AS sha256 FROM photograph f JOIN record r ON r.key = f.key ORDER BY f.key')
    .all() as { jar: number; id: string; sha256: string }[];
  const byJar = new Map<number, typeof all>();
  for (const one of all) byJar.set(one.jar, [...(byJar.get(one.jar) ?? []), one]);
  return new Map(jars.flatMap(({ key }) => {
    const found = byJar.get(key);
    return found ? [[key, found.map(({ id, sha256 }) => ({ id, sha256 }))] as const] : [];
  }));
} // prettier-ignore

/** Photographs that would go into the page. */
export const photographsFor = (ledger: Ledger, line: string | null): { id: string; sha256: string }[] =>
  [...photographsOf(ledger, jarsOf(ledger, line).slice(0, MOST_JARS)).values()]
    .flat()
    .slice(0, MOST_PAGE_PHOTOGRAPHS);

/** By id, as base64. @throws Refused 'photograph too large', 'not a photograph', 'no re-encoder' */
function smallPhotographs(given: AskPage['photographs']): Map<string, string> {
  return new Map(
    given.map(({ id, bytes }) => {
      if (bytes.length > MOST_SMALL_PHOTOGRAPH) throw new Refused('photograph too large');
      const picture = readJpeg(bytes);
      if (!picture) throw new Refused('not a photograph');
      if (picture.carriesMore) throw new Refused('no re-encoder');
      return [id, Buffer.from(bytes).toString('base64')];
    }),
  );
}

function rowsOf(ledger: Ledger, jar: KnownJar, privateToo: boolean): PageJar['rows'] {
  const { preferences, rows, index } = ledger;
  const record = jarRecord(ledger, jar.key);
  const { milk, milkAmount } = record.jar;
  const seeds = record.seedings.map(({ seeding, label, share }) =>
    [
      seeding.amount && printAmount(seeding.amount, preferences),
      label,
      share === null || record.seedings.length < 2 ? '' : `(${Math.round(share * 100)} %)`,
    ].filter(Boolean).join(' '));
  const added = record.additions.map(({ name, actual }) => (actual === null ? name : `${printAmount(actual, preferences)} ${name}`));
  const { ph, whey } = record.outcome ?? { ph: null, whey: null };
  const seen = [jar.setWord, ph === null ? null : `pH ${ph}`, whey && `whey: ${whey}`].filter(Boolean).join(', ');
  const stands = jarCautions(ledger, jar.key).filter(({ cleared, of }) => !cleared && of !== jar.uid);
  const because = stands.map(({ how, label }) => `${how} (${label})`);
  const own = jar.safety.discard === null ? [] : [discardWords(jar.safety.discard)];
  const remarks = record.remarks.filter(({ id }) => privateToo || rows.get('remark', rows.keyOf('remark', id)).private !== true);
  const found: (readonly [string, string])[] = [
    ['Made', madeWords(jar, 'on a day not known')],
    ['Seeded from', seeds.join('; ') || 'not known'],
    ['Milk', [milkAmount && printAmount(milkAmount, preferences), milk].filter(Boolean).join(' ') || 'not noted'],
    ['Stirred in', added.join('; ')],
    ['Held', jar.holdHours === null ? '' : `${Math.round(jar.holdHours * 10) / 10} h`],
    ['Came out', seen || 'not noted'],
    ['To be careful of', [...own, ...because].join('; ')],
    ['Seeded', index.family.childrenOf(jar.key).map((key) => index.jar(key).label).join(', ')],
    ['Remarks', remarks.map(({ text }) => text).join(' · ')],
    ['Code', shortCode(jar.uid)],
  ];
  return found.filter(([, words]) => words !== '');
} // prettier-ignore

function briefOf({ index }: Ledger, jar: KnownJar): string {
  const { deepest, atLeast } = index.family.generationOf(jar.key);
  const level = index.family.cautionLevelOf(jar.key);
  return [
    `generation ${atLeast ? 'at least ' : ''}${deepest}`,
    jar.setWord,
    jar.safety.discard === null ? level : discardWords(jar.safety.discard),
  ].filter(Boolean).join(' · '); // prettier-ignore
}

function lineOn(ledger: Ledger, batch: number): PageLine {
  const line = ledger.rows.uidOf('batch', batch);
  const { sentence } = judgeOneLine(ledger, { line });
  return {
    name: lineNames(ledger)(batch),
    facts: factsOfLine(ledger, batch, keysOfPart(ledger, { part: 'line', line })),
    verdict: verdictForOthers(lineAdvice(ledger, { line })),
    standing: sentence,
  };
}

/** @throws Refused 'not found', 'nothing to draw', and of photographs that are none */
export function pageTold(ledger: Ledger, { line, privateToo, photographs }: AskPage, title: string): LedgerPage {
  const { family } = ledger.index;
  const all = jarsOf(ledger, line);
  if (all.length === 0) throw new Refused('nothing to draw');
  const jars = all.slice(0, MOST_JARS);
  const told = new Set(jars.map(({ key }) => key));
  const small = smallPhotographs(photographs);
  const taken = photographsOf(ledger, all);
  const lines = line === null ? family.lines.map(({ batch }) => batch) : [lineBatch(ledger, line)];
  const shown = jars.map((jar): PageJar => ({
    code: shortCode(jar.uid),
    label: jar.label,
    brief: briefOf(ledger, jar),
    rows: rowsOf(ledger, jar, privateToo),
    photographs: (taken.get(jar.key) ?? []).flatMap(({ id }) => small.get(id) ?? []),
  }));
  const there = [...taken.values()].flat().length;
  return {
    title,
    intro: pageIntro(jars.length, all.length, privateToo),
    today: todayWords(ledger),
    // A hundred lines of one batch each say nothing that their jars don't.
    lines: lines.slice(-20).map((batch) => lineOn(ledger, batch)),
    picture: drawnFamily(ledger, [...told], (uid) => `#${anchorOf(shortCode(uid))}`),
    jars: shown,
    photographsLeft: there - shown.reduce((sum, one) => sum + one.photographs.length, 0),
  };
} // prettier-ignore

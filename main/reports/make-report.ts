// Pages that leave the program to be read, each made whole from what the ledger holds; and writing one to a file.
import { resolve } from 'node:path';
import type { Parsed, Reply } from '../../core/contract';
import { shortCode } from '../../core/lineage/short-codes';
import { pictureFile } from '../../core/pictures/family-picture';
import { familySheets } from '../../core/reports/family-sheets';
import { ledgerPage } from '../../core/reports/ledger-page';
import { makingCardPage } from '../../core/reports/making-card-page';
import { lineReport } from '../../core/reports/line-report';
import { rowsPage, rowsSize } from '../../core/reports/rows-page';
import { ROWS_TITLE } from '../../core/says/rows-says';
import { givenSheet, tellSheet } from '../../core/reports/sheets';
import { PICTURE_CAPTION } from '../../core/says/report-says';
import { type AskReport, PAPER_SIZES } from '../../core/shapes/report-calls';
import { chosenPath } from '../files/chosen-path';
import { putFile } from '../ledger/put-file';
import { aboutHandOver, listHandOvers } from '../hand-over/write-hand-over';
import type { Ledger } from '../ledger/ledger';
import { familyMember, lineNames } from '../ledger/reads/read-views';
import { Refused } from '../refusal';
import { drawnFamily, keysOfPart, lineBatch } from './drawn-family';
import { cardOfBatch } from './gather-card';
import { lineTold, todayWords } from './gather-line';
import { pageTold, photographsFor } from './gather-page';

const plain = { svg: null, photographs: [] };

/** What a drawing or a page is called. */
function titleOf(ledger: Ledger, asked: Extract<AskReport, { of: 'family' | 'page' }>): string {
  const line = asked.of === 'page' ? asked.line : asked.part.part === 'line' ? asked.part.line : null;
  if (line !== null) return lineNames(ledger)(lineBatch(ledger, line));
  if (asked.of === 'page' || asked.part.part === 'all') return 'The family';
  if (asked.part.part === 'line') return 'The family';
  const { label } = familyMember(ledger, asked.part.jar);
  return { before: `What ${label} comes from`, after: `What came of ${label}`, around: `${label} and its kin` }[asked.part.part]; // prettier-ignore
}

/**
 * One report.
 * @throws Refused 'not found', 'nothing to draw', 'picture too large'; of a jar to be given as writeHandOver
 */
export function makeReport(ledger: Ledger, { report }: Parsed<'report.get'>): Reply<'report.get'> {
  const today = todayWords(ledger);
  switch (report.of) {
    case 'line': {
      const told = lineTold(ledger, report.line);
      return { title: told.name, html: lineReport(told, report.paper, today), page: PAPER_SIZES[report.paper], ...plain };
    }
    case 'jar': {
      const { about } = aboutHandOver(ledger, { jar: report.jar, include: [] });
      const html = givenSheet(about, shortCode(report.jar), report.paper);
      return { title: about.label, html, page: PAPER_SIZES[report.paper], ...plain };
    }
    case 'making card': {
      const card = cardOfBatch(ledger, { id: report.batch });
      return { title: card.title, html: makingCardPage(card, report.paper), page: PAPER_SIZES[report.paper], ...plain };
    }
    case 'rows':
      return { title: ROWS_TITLE, html: rowsPage(report.paper), page: rowsSize(report.paper), ...plain };
    case 'told': {
      const given = listHandOvers(ledger).handOvers.filter(({ discard, caution }) => discard !== null || caution !== null);
      const toTell = given.map(({ to, label, on, discard }) => ({ to, label, on, discard: discard !== null }));
      return { title: 'Whom to tell', html: tellSheet(toTell, report.paper, today), page: PAPER_SIZES[report.paper], ...plain };
    }
    case 'family': {
      const title = titleOf(ledger, report);
      const picture = drawnFamily(ledger, keysOfPart(ledger, report.part));
      const svg = pictureFile(picture, title, PICTURE_CAPTION);
      return { title, ...familySheets(picture, title, report.paper), svg, photographs: [] };
    }
    case 'page': {
      const title = titleOf(ledger, report);
      const html = ledgerPage(pageTold(ledger, report, title));
      return { title, html, page: PAPER_SIZES.A4, svg: null, photographs: photographsFor(ledger, report.line) };
    }
  }
} // prettier-ignore

/** Signature of a PNG (ISO/IEC 15948, 5.2). */
const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/**
 * Writes a report as a file: the picture as SVG, or as the PNG that the page drew of it; anything else as HTML.
 * @throws Refused as makeReport; 'not a picture', 'file exists', 'no folder there', and for a place that can't be written to
 */
export function writeReport(ledger: Ledger, { report, file: told, png }: Parsed<'report.write'>): Reply<'report.write'> {
  const file = resolve(chosenPath(told, 'report.write'));
  if (png !== null && (report.of !== 'family' || !PNG.every((byte, at) => png[at] === byte)))
    throw new Refused('not a picture');
  const { svg, html } = makeReport(ledger, { report });
  const bytes = png ?? new TextEncoder().encode(svg ?? html);
  putFile(file, bytes);
  return { file, bytes: bytes.length };
} // prettier-ignore

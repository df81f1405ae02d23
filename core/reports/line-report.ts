// A line told on paper: its verdict, its family, how it does, what it was started from, how it is made, what to be careful of.
import type { LineJudgementReply } from '../shapes/vigour-replies';
import type { Paper } from '../shapes/report-calls';
import { PAPER_SIZES } from '../shapes/report-calls';
import type { FamilyPicture } from '../pictures/family-picture';
import { strips } from '../pictures/family-picture';
import { FOOD_CAUTION } from '../says/food-caution-says';
import {
  DECLARED,
  FROM_A_LEDGER,
  NO_SAFETY,
  PICTURE_CAPTION,
  stripWords,
  TREND_CAPTION,
} from '../says/report-says';
import { escaped } from '../markup';
import { documentOf, list, paragraph, table } from './document';
import { trendPlot } from './trend-plot';

/** All that a line's report tells. */
export interface LineTold {
  readonly name: string;
  readonly facts: string;
  readonly verdict: string;
  readonly judgement: LineJudgementReply;
  /** Name of a source, how often the label says it, and each strain as declared. */
  readonly strains: readonly (readonly [source: string, strain: string, count: string])[];
  /** How its newest batch was made. */
  readonly made: readonly (readonly [what: string, words: string])[];
  /** Jars on which something stands, and what. */
  readonly cautions: readonly (readonly [jar: string, words: string])[];
  readonly picture: FamilyPicture;
}

const MARGIN = 15;
/** More cautions than these are counted. */
const MOST_CAUTIONS = 40;

const section = (title: string, body: string): string =>
  body === '' ? '' : `<section><h2>${escaped(title)}</h2>${body}</section>`;

function howItDoes({ batches, baseline, sentence, since, reasons, name }: LineJudgementReply): string {
  const dots = batches.map(({ label, score, first }) => ({ label, score, hollow: first }));
  const plot = dots.some(({ score }) => score !== null)
    ? `<figure>${trendPlot(dots, baseline === null ? null : Math.min(100, Math.max(0, baseline)), name)}<figcaption>${escaped(`${TREND_CAPTION} ${NO_SAFETY}`)}</figcaption></figure>`
    : '';
  return paragraph(sentence, 'keep') + paragraph(since ?? '') + list(reasons.slice(0, 4)) + plot;
}

function howReckoned({ why, effects, model }: LineJudgementReply): string {
  const corrected = effects.map(
    ({ name, points }) => `${name}: ${points > 0 ? '+' : ''}${points.toFixed(1)}`,
  );
  return [
    paragraph(why.formula),
    list(why.assumptions),
    corrected.length === 0 ? '' : paragraph(`Corrected for (points): ${corrected.join('; ')}`),
    paragraph(`${why.source ?? 'Plain arithmetic'}; model ${model.version}`, 'small'),
  ].join('');
}

function familyOn(picture: FamilyPicture, paper: { width: number; height: number }): string {
  const cut = strips(picture, { width: paper.width - 2 * MARGIN, height: paper.height - 2 * MARGIN - 20 });
  const parts = cut.map(({ svg }, at) => `<figure>${svg}<figcaption>${escaped(stripWords(at + 1, cut.length))}</figcaption></figure>`);
  return parts.join('') + paragraph(PICTURE_CAPTION, 'small');
} // prettier-ignore

const STRAIN_HEAD = ['Source', 'Strain', 'Declared count'];
const startedFrom = ({ strains }: LineTold): string =>
  table(strains, STRAIN_HEAD) + paragraph(DECLARED, 'small');

function carefulOf({ cautions }: LineTold): string {
  if (cautions.length === 0) return paragraph('Nothing known.');
  const more = cautions.length - MOST_CAUTIONS;
  return table(cautions.slice(0, MOST_CAUTIONS)) + (more > 0 ? paragraph(`and ${more} jars more`) : '');
}

/** @param today in words */
export function lineReport(told: LineTold, paper: Paper, today: string): string {
  const size = PAPER_SIZES[paper];
  const body = [
    `<h1>${escaped(told.name)}</h1>`,
    paragraph(`${told.facts} · as of ${today}`, 'soft'),
    paragraph(told.verdict, 'lead'),
    section('How it does', howItDoes(told.judgement)),
    section('Its family', familyOn(told.picture, size)),
    section('What it was started from', startedFrom(told)),
    section('How the newest batch was made', table(told.made)),
    section('To be careful of', carefulOf(told)),
    section('How this was reckoned', howReckoned(told.judgement)),
    paragraph(FOOD_CAUTION, 'small keep'),
    paragraph(FROM_A_LEDGER, 'small soft'),
  ].join('\n'); // prettier-ignore
  return documentOf({ title: told.name, body, sheet: { ...size, margin: MARGIN } });
}

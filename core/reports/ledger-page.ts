// The whole ledger, or a line of it, as one page for a screen: nothing from elsewhere, read as well on a telephone.
import { escaped } from '../markup';
import { FOOD_CAUTION } from '../says/food-caution-says';
import { FROM_A_LEDGER, NO_SAFETY, PICTURE_CAPTION, photographsLeftOut } from '../says/report-says';
import { type FamilyPicture, pictureFile } from '../pictures/family-picture';
import { documentOf, paragraph, terms } from './document';

export interface PageJar {
  /** Its short code: what a link within the page leads to. */
  readonly code: string;
  readonly label: string;
  /** Beside its label: generation, how it set, what stands on it. */
  readonly brief: string;
  readonly rows: readonly (readonly [name: string, words: string])[];
  /** Small, as base64. */
  readonly photographs: readonly string[];
}

export interface PageLine {
  readonly name: string;
  readonly facts: string;
  readonly verdict: string;
  readonly standing: string;
}

export interface LedgerPage {
  readonly title: string;
  readonly intro: string;
  readonly today: string;
  readonly lines: readonly PageLine[];
  readonly picture: FamilyPicture | null;
  readonly jars: readonly PageJar[];
  readonly photographsLeft: number;
}

/** What a jar is called within the page. */
export const anchorOf = (code: string): string => `jar-${code}`;

const oneJar = ({ code, label, brief, rows, photographs }: PageJar): string => {
  const shown = photographs
    .map((data) => `<figure><img alt="${escaped(label)}" src="data:image/jpeg;base64,${data}"></figure>`)
    .join('');
  return `<details id="${anchorOf(code)}"><summary><strong>${escaped(label)}</strong> <span class="soft">${escaped(brief)}</span></summary>${terms(rows)}${shown}</details>`;
};

export function ledgerPage(page: LedgerPage): string {
  const { title, intro, today, lines, picture, jars, photographsLeft } = page;
  const body = [
    `<h1>${escaped(title)}</h1>`,
    paragraph(`As of ${today}. ${intro}`, 'soft'),
    ...lines.map(
      ({ name, facts, verdict, standing }) =>
        `<h2>${escaped(name)}</h2>${paragraph(facts, 'soft')}${paragraph(verdict, 'lead')}${paragraph(`${standing} ${NO_SAFETY}`)}`,
    ),
    ...(picture === null
      ? []
      : [
          '<h2>The family</h2>',
          `<div class="scroll" tabindex="0" role="region" aria-label="The family">${pictureFile(picture, title, '')}</div>`,
          paragraph(PICTURE_CAPTION, 'small soft'),
        ]),
    '<h2>The jars</h2>',
    ...jars.map(oneJar),
    photographsLeft > 0 ? paragraph(photographsLeftOut(photographsLeft), 'small soft') : '',
    paragraph(FOOD_CAUTION, 'small'),
    paragraph(FROM_A_LEDGER, 'small soft'),
  ].join('\n');
  return documentOf({ title, body, sheet: null });
}

// The making card on paper: a box to tick before each step, and a row for each jar with room for what really went in.
import { escaped } from '../markup';
import type { MakingCard } from '../shapes/card-calls';
import { PAPER_SIZES, type Paper } from '../shapes/report-calls';
import { documentOf, list, paragraph } from './document';

const MARGIN = 10;
const STYLE = `<style>
body { font-size: 9.8pt; line-height: 1.32 } h2 { margin: 2.6mm 0 1mm }
.tick { list-style: none; padding: 0; margin: 0 } .tick li { display: flex; gap: 3mm; margin: 0 0 1.1mm; break-inside: avoid }
.tick li::before { content: ''; flex: none; width: 4.2mm; height: 4.2mm; border: .35mm solid #000; margin-top: .2mm }
.rows { table-layout: fixed; width: calc(100% - .4mm); margin-top: 2mm }
.rows td { height: 11mm; border: .2mm solid #777; padding: 1mm 1.5mm } .rows th { border: .2mm solid #777; padding: 1mm 1.5mm }
.rows .letter { font-size: 16pt; font-weight: 700; text-align: center }
.keep { margin-top: 3mm }
</style>`;

const ticks = (steps: readonly string[]): string =>
  `<ul class="tick">${steps.map((step) => `<li><span>${escaped(step)}</span></li>`).join('')}</ul>`;

function jarRows(jars: MakingCard['jars']): string {
  const heads = ['Jar', 'Empty weight', 'Seed', 'Stirred in', 'Milk, vessel', 'Went in', 'Full weight'];
  const rows = jars.map(
    ({ letter, seed, stirredIn, milk }) =>
      `<tr><td class="letter">${escaped(letter)}</td><td></td><td>${escaped(seed)}</td><td>${escaped(stirredIn)}</td><td>${escaped(milk)}</td><td></td><td></td></tr>`,
  );
  return `<table class="rows"><thead><tr>${heads.map((head) => `<th scope="col">${head}</th>`).join('')}</tr></thead><tbody>${rows.join('')}</tbody></table>`;
}

/** The card as a document. */
export function makingCardPage({ title, intro, parts, jars, cautions }: MakingCard, paper: Paper): string {
  const [before, ...others] = parts.map(
    ({ head, steps }) => `<section><h2>${escaped(head)}</h2>${ticks(steps)}</section>`,
  );
  const body = [
    STYLE,
    `<h1>${escaped(title)}</h1>`,
    paragraph(intro, 'soft'),
    before ?? '',
    jarRows(jars),
    ...others,
    `<section class="keep small">${list(cautions)}</section>`,
  ];
  return documentOf({ title, body: body.join('\n'), sheet: { ...PAPER_SIZES[paper], margin: MARGIN } });
}

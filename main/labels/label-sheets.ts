// Labels of jars, as pages to print.
import type { Parsed, Reply } from '../../core/contract';
import { beyondPage, labelDocument, labelPages } from '../../core/labels/label-page';
import { type LabelFacts, labelLines } from '../../core/says/label-says';
import { shortCode } from '../../core/lineage/short-codes';
import { aboutJar, unopenedUntil } from '../hand-over/about-jar';
import { aboutHandOver } from '../hand-over/write-hand-over';
import type { Ledger } from '../ledger/ledger';
import { familyMember, jarViews } from '../ledger/reads/read-views';
import { Refused } from '../refusal';

/** What a label tells of a jar. Of one to be given only where nothing speaks against giving it. @throws as writeHandOver */
function factsOf(ledger: Ledger, id: string, kind: Parsed<'label.sheet'>['kind']): LabelFacts {
  const jar = familyMember(ledger, id);
  const [view] = jarViews(ledger, [jar.key]);
  const seeds = (view?.seeds ?? []).map(({ label }) => label);
  const discard = ledger.index.jar(jar.key).safety.discard !== null;
  if (kind === 'giving')
    return { about: aboutHandOver(ledger, { jar: id, include: [] }).about, seeds, discard };
  const about = { ...aboutJar(ledger, jar), unreadBefore: 0, eatBy: unopenedUntil(jar) };
  return { about, seeds, discard };
}

/** @throws Refused 'labels beyond page', 'label too small', and of jars to be given as writeHandOver */
export function labelSheets(
  ledger: Ledger,
  { jars, kind, layout }: Parsed<'label.sheet'>,
): Reply<'label.sheet'> {
  const side = beyondPage(layout);
  if (side !== null) throw new Refused('labels beyond page', { side });
  const made = jars.map((jar) => {
    const facts = factsOf(ledger, jar, kind);
    return { jar, label: facts.about.label, code: shortCode(jar), lines: labelLines(kind, facts) };
  });
  const pages = labelPages(made, layout);
  if (pages === null)
    throw new Refused('label too small', { width: layout.label.width, height: layout.label.height });
  return {
    pages,
    html: labelDocument(pages, layout),
    labels: made.map(({ jar, label, code }) => ({ jar, label, code })),
  };
}

// What stands on a label, line by line: for one's own shelf, and for giving a jar away. It never says that a jar may be eaten.
import { madeWords } from './hand-over-says';
import { dayLabel } from '../lineage/labels';
import type { AboutJar } from '../shapes/hand-over-calls';
import type { LABEL_KINDS } from '../shapes/label-calls';

export interface LabelLine {
  readonly text: string;
  /** Its size beside that of plain text. */
  readonly size: number;
  readonly bold: boolean;
}

export interface LabelFacts {
  readonly about: AboutJar;
  /** Labels of what seeded it. */
  readonly seeds: readonly string[];
  /** Neither food nor seed: nothing but that is to be read of it. */
  readonly discard: boolean;
}

const plain = (text: string): LabelLine => ({ text, size: 1, bold: false });
const small = (text: string): LabelLine => ({ text, size: 0.85, bold: false });
const bold = (text: string): LabelLine => ({ text, size: 1, bold: true });
const title = (text: string): LabelLine => ({ text, size: 1.5, bold: true });

const made = ({ generation: { deepest, atLeast }, ...about }: AboutJar): LabelLine =>
  plain(`Made ${madeWords(about, 'on a day not known')} · generation ${atLeast ? 'at least ' : ''}${deepest}`); // prettier-ignore
const eatBy = ({ eatBy: day }: AboutJar): LabelLine =>
  bold(day === null ? 'Eat by: its day is not known, look first' : `Eat by ${dayLabel(day, true)}`);

/** What stands in place of "eat by" where something speaks against the jar: it may be long on the shelf, or already given. */
function untilWhen(about: AboutJar, discard: boolean): LabelLine[] {
  if (discard) return [bold('DISCARD: neither food nor seed')];
  const levels = about.cautions.filter(({ lifted, ended }) => !lifted && !ended).map(({ level }) => level);
  if (levels.includes('set aside')) return [bold('SET ASIDE: not to be eaten, not for seed')];
  return levels.length > 0 ? [bold('LOOK AND SMELL FIRST'), eatBy(about)] : [eatBy(about)];
}

function forShelf({ about, seeds, discard }: LabelFacts): LabelLine[] {
  const from = seeds.length === 0 ? [] : [plain(`From ${seeds.join(', ')}`)];
  return [title(about.label), made(about), ...from, ...untilWhen(about, discard)];
}

function contains({ allergens, traces }: AboutJar): LabelLine {
  const others = allergens.filter((one) => one !== 'milk').map((one) => one.toUpperCase());
  const also = traces.length === 0 ? '' : `. Traces of ${traces.join(', ')}`;
  return bold(`Contains MILK${others.map((one) => `, ${one}`).join('')}${also}`);
}

/**
 * Four degrees and five days once opened: common practice, no source. Whom it is not for: as every screen says of live cultures.
 */
function forGiving({ about, discard }: LabelFacts): LabelLine[] {
  const added = about.additions.map(({ name }) => name).join(', ');
  return [
    bold('Home-made live cultured milk'),
    title(about.label),
    made(about),
    plain('Keep at or below 4 °C / 40 °F'),
    ...untilWhen(about, discard),
    plain('Once opened: eat within 5 days'),
    contains(about),
    ...(added === '' ? [] : [plain(`With ${added}`)]),
    small('Made at home, not inspected. Not for babies. If you are pregnant, ill or your immunity is weakened, ask a doctor first.'),
  ]; // prettier-ignore
}

export const labelLines = (kind: (typeof LABEL_KINDS)[number], facts: LabelFacts): LabelLine[] =>
  kind === 'shelf' ? forShelf(facts) : forGiving(facts);

// What the seeds of remembered rows are: a jar of a row, of the ledger, or a product. Rows are looked through first, then what the
// ledger was asked. Pure but for the asking.
import type { Reply } from '../../core/contract';
import { batchDay, calledDay } from '../../core/lineage/labels';
import type { DaysMade } from '../parts/reading';
import { daysOf } from './batch-days';
import { call } from '../state/ledger-calls';

/** A jar of a row: its batch, and its place among the jars of the call that records it. */
export interface HereJar {
  readonly batch: number;
  readonly place: number;
  readonly letter: string;
  /** As the keeper typed the day, and what it is. */
  readonly dayTyped: string;
  readonly made: DaysMade;
}

/** What the ledger says to a name. */
export interface Asked {
  readonly named: { readonly id: string; readonly label: string } | null;
  readonly jars: readonly { readonly id: string; readonly label: string }[];
  readonly sources: readonly { readonly id: string; readonly name: string }[];
}

export type Resolved =
  | { readonly kind: 'here'; readonly place: number; readonly label: string }
  | { readonly kind: 'jar'; readonly id: string; readonly label: string }
  | { readonly kind: 'source'; readonly id: string; readonly label: string }
  | { readonly kind: 'new source'; readonly label: string }
  | { readonly kind: 'wrong'; readonly sentence: string; readonly product: string | null };

const hereLabel = ({ made, letter }: Pick<HereJar, 'made' | 'letter'>): string =>
  `${batchDay(calledDay(made), false) ?? 'day not known'} ${letter}`;

const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ');

/** The jar of a row that is meant: "a" is that of the nearest earlier day, "mid Jan a" that of its own day. */
function ofRows(name: string, own: HereJar, here: readonly HereJar[]): HereJar | null {
  const said = plain(name);
  const byLabel = here.find(
    (one) => said === plain(`${one.dayTyped} ${one.letter}`) || said === plain(hereLabel(one)),
  );
  const before = here
    .filter(
      ({ batch, letter, made }) => batch !== own.batch && plain(letter) === said && at(made) <= at(own.made),
    )
    .toSorted((a, b) => at(a.made).localeCompare(at(b.made)));
  return byLabel ?? before.at(-1) ?? null;
}

const at = (made: DaysMade): string => daysOf(made).at;

function ofLedger(name: string, asked: Asked | undefined, products: readonly string[]): Resolved {
  const said = plain(name);
  if (products.some((one) => plain(one) === said)) return { kind: 'new source', label: name.trim() };
  if (asked === undefined)
    return { kind: 'wrong', sentence: `“${name}” is being looked for.`, product: null };
  const source =
    asked.sources.find((one) => plain(one.name) === said) ??
    (asked.sources.filter((one) => plain(one.name).startsWith(said)).length === 1 && said.length > 2
      ? asked.sources.find((one) => plain(one.name).startsWith(said))
      : undefined);
  if (source) return { kind: 'source', id: source.id, label: source.name };
  // A letter or two are a part of many labels: only a whole name is one then.
  const found = asked.named ?? (asked.jars.length === 1 && said.length > 2 ? asked.jars[0] : null);
  if (found) return { kind: 'jar', id: found.id, label: found.label };
  if (asked.jars.length > 1 && said.length > 2) {
    const [one, two] = asked.jars;
    return {
      kind: 'wrong',
      sentence: `“${name}” may be ${one?.label} or ${two?.label}. Type which, or both with “or” between them where nobody is sure.`,
      product: null,
    };
  }
  return {
    kind: 'wrong',
    sentence: `No jar or product is called “${name}”. Type a jar’s label, “?” where nobody knows, or add it as a product.`,
    product: name.trim(),
  };
}

/** What one name of a row stands for. @param own the row's jar: it is not seeded by a mate */
export function resolved(
  name: string,
  own: HereJar,
  here: readonly HereJar[],
  asked: ReadonlyMap<string, Asked>,
  products: readonly string[],
): Resolved {
  const row = ofRows(name, own, here);
  return row
    ? { kind: 'here', place: row.place, label: hereLabel(row) }
    : ofLedger(name, asked.get(plain(name)), products);
}

const HOW_MANY = 6;

/** Asks the ledger about names. A call that fails tells nothing, and is said by whoever shows it. */
export async function askNames(
  names: readonly string[],
): Promise<{ readonly asked: ReadonlyMap<string, Asked>; readonly problem: string | null }> {
  const listed = await call('source.list', {});
  const sources: Reply<'source.list'>['sources'] = listed.ok ? listed.value.sources : [];
  const found = await Promise.all(
    names.map(async (name) => ({
      name,
      answer: await call('jar.find', { text: name.trim(), limit: HOW_MANY, notAfter: null }),
    })),
  );
  const failed = [listed, ...found.map(({ answer }) => answer)].find((one) => !one.ok);
  return {
    asked: new Map(
      found.map(({ name, answer }) => [
        plain(name),
        {
          named: answer.ok ? answer.value.named : null,
          jars: answer.ok ? answer.value.jars.map(({ id, label }) => ({ id, label })) : [],
          sources: sources.map(({ id, name: called }) => ({ id, name: called })),
        },
      ]),
    ),
    problem: failed && !failed.ok ? failed.sentence : null,
  };
}

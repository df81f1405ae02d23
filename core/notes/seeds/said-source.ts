// A seed that says in so many words what it is: "Product “Blue Tin” (5 pieces)", "Culture “Hillside pot” of generation 4". The
// table of jars (core/tables/jar-table.ts) is written so: what stands between the marks is a name, whatever words are in it.
import { seedOf, type Resolved, type SeedContext } from './seed-index';
import { wholeAmount } from './seed-amounts';

const SAID = /^(Product|Culture) “(.+)”(?: of generation ([1-9]\d{0,4}))?(?: \(([^()]+)\))?$/u;

/** Such a seed, or null. */
export function saidSource(text: string, context: Pick<SeedContext, 'amounts'>): Resolved | null {
  const [, what, name = '', generations, told] = SAID.exec(text.trim()) ?? [];
  if (what === undefined) return null;
  const amount = told === undefined ? null : wholeAmount(told, context.amounts);
  if (told !== undefined && amount === null) return null;
  const culture = what === 'Culture';
  const form = culture ? 'culture' : (amount?.form ?? null);
  const known = generations === undefined ? null : Number(generations);
  return seedOf(
    { source: { name, form, culture, guessed: false, unnamed: false, said: true, generations: known } },
    amount,
  );
}

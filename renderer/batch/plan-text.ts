// What the fields of a new batch ask of a plan, as far as they can be read: nothing has to be whole. Pure.
import type { Input } from '../../core/contract';
import type { Amount } from '../../core/ledger/basics';
import type { Read, Reader } from '../parts/reading';
import { countsPieces } from './batch-entry';
import {
  isEmptyAddition,
  isEmptySeed,
  recipeOf,
  saysPlain,
  type BatchText,
  type JarText,
} from './batch-text';

type Asked = Input<'plan.batch'>;
type AskedJar = NonNullable<Asked['jars']>[number];

/** What the plan's own fields say. */
export interface PlanText {
  readonly milkAtHand: string;
  readonly awayUntil: string;
}
export const noPlan: PlanText = { milkAtHand: '', awayUntil: '' };

const valueOf = <T>(read: Read<T>): T | null => (read.ok ? read.value : null);
const millilitres = (amount: Amount | null): number | null => (amount?.unit === 'mL' ? amount.value : null);

/** How full a jar will be (mL): as told, else its milk; null where nobody said. */
function volumeOf({ milk }: ReturnType<typeof recipeOf>, reader: Reader): number | null {
  const read = (text: string): number | null => millilitres(valueOf(reader.amount(text, 'volume')));
  return read(milk.finalVolume) ?? read(milk.milkAmount);
}

function jarAsked(text: BatchText, jar: JarText, reader: Reader): AskedJar | null {
  const recipe = recipeOf(text, jar);
  const volume = volumeOf(recipe, reader);
  if (volume === null || volume < 1) return null;
  const seeds = recipe.seeds
    // A product that is new, and what is not picked yet, are nothing that is known.
    .filter((seed) => !isEmptySeed(seed) && (seed.picked?.kind === 'jar' || seed.picked?.kind === 'source'))
    .map((seed) => ({
      source: seed.picked?.kind === 'source' ? seed.picked.id : null,
      package: seed.package === '' ? null : seed.package,
      amount: inUnit(valueOf(reader.amount(seed.amount, countsPieces(seed) ? 'pieces' : undefined))),
    }));
  return {
    vessel: recipe.milk.vessel.trim() === '' ? null : recipe.milk.vessel.trim(),
    volume,
    seeds,
    additions: recipe.additions
      .filter((one) => !isEmptyAddition(one) && !saysPlain(one) && one.name.trim() !== '')
      .map((one) => ({
        name: one.name.trim(),
        amount: inUnit(valueOf(reader.amount(one.actual === '' ? one.planned : one.actual))),
        package: one.package === '' ? null : one.package,
      })),
    milkPackage: recipe.milk.milkPackage === '' ? null : recipe.milk.milkPackage,
  };
}

const inUnit = (amount: Amount | null) =>
  amount === null ? null : { value: amount.value, unit: amount.unit };

/** The question. */
export function planAsked(text: BatchText, plan: PlanText, reader: Reader): Asked {
  const hours = valueOf(reader.hours(text.holds[0]?.hours ?? ''));
  const back = valueOf(reader.day(plan.awayUntil, true));
  return {
    ...(hours !== null && hours >= 1 && hours <= 96 ? { hours } : {}),
    jars: text.jars.flatMap((jar) => jarAsked(text, jar, reader) ?? []),
    milkAtHand: millilitres(valueOf(reader.amount(plan.milkAtHand, 'volume'))),
    awayUntil: back,
  };
}

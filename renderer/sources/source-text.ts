// A source and a package as they stand in the fields, and what they come to. Pure.
import { showsNothing } from '../../core/ledger/blank';
import type { Package, Source } from '../../core/ledger/records';
import { printPrice } from '../../core/quantities/quantities';
import type { Reader } from '../parts/reading';
import { lineOrNull, Taking, type Problems } from '../parts/taking';
import type { Writer } from '../parts/reading';

export interface StrainText {
  readonly genus: string;
  readonly species: string;
  readonly designation: string;
  readonly count: string;
}
export interface SourceText {
  readonly kind: 'product' | 'culture';
  readonly name: string;
  readonly form: '' | 'capsules' | 'tablets' | 'sachets' | 'powder';
  readonly strains: readonly StrainText[];
  readonly total: string;
  readonly guaranteed: '' | 'manufacture' | 'expiry';
  readonly receivedFrom: string;
  readonly generations: string;
  readonly note: string;
}
export interface PackageText {
  readonly of: string;
  readonly name: string;
  readonly size: string;
  readonly price: string;
  readonly boughtOn: string;
  readonly openedOn: string;
  readonly bestBefore: string;
  readonly note: string;
}

export const noStrain: StrainText = { genus: '', species: '', designation: '', count: '' };

/** A count as text that reads back as the same number. */
const countText = (count: number | null): string =>
  count === null
    ? ''
    : count >= 1e9
      ? `${count / 1e9} billion`
      : count >= 1e6
        ? `${count / 1e6} million`
        : String(count);

export function sourceText(source: Source | null, kind: SourceText['kind'] = 'product'): SourceText {
  const culture = source ? source.form === 'culture' : kind === 'culture';
  const strains = (source?.strains ?? []).map((strain) => ({
    genus: strain.genus,
    species: strain.species,
    designation: strain.designation,
    count: countText(strain.countPerPiece),
  }));
  return {
    kind: culture ? 'culture' : 'product',
    name: source?.name ?? '',
    form: source?.form && source.form !== 'culture' ? source.form : '',
    strains: strains.length > 0 ? strains : [noStrain],
    total: countText(source?.blendTotalPerPiece ?? null),
    guaranteed: source?.guaranteed ?? '',
    receivedFrom: source?.receivedFrom ?? '',
    generations: source?.knownGenerations ? String(source.knownGenerations) : '',
    note: source?.note ?? '',
  };
}

/** Reads a source. Strain rows with nothing in them are left out. */
export function readSource(
  text: SourceText,
  id: string | null,
  reader: Reader,
): { readonly source: Omit<Source, 'id'> & { readonly id: string | null }; readonly problems: Problems } {
  const taking = new Taking();
  const name = lineOrNull(text.name);
  if (name === null || showsNothing(name))
    taking.say('name', text.kind === 'culture' ? 'Give the culture a name.' : 'Type the name on the label.');
  const culture = text.kind === 'culture';
  const strains = text.strains.flatMap((strain, at) => {
    const words = [strain.genus, strain.species, strain.designation].map((word) => word.trim());
    const count = taking.take(`strains.${at}.count`, reader.count(strain.count));
    if (words.every((word) => word === '')) {
      if (strain.count.trim() !== '')
        taking.say(`strains.${at}.designation`, 'Say which strain this count is of.');
      return [];
    }
    return [{ genus: words[0]!, species: words[1]!, designation: words[2]!, countPerPiece: count }];
  });
  const total = taking.take('total', reader.count(text.total));
  const summed = strains.reduce((sum, strain) => sum + (strain.countPerPiece ?? 0), 0);
  if (total !== null && summed > total * 1.001)
    taking.say('total', 'The strains add up to more than this total. Please check the label.');
  return {
    source: {
      id,
      name: name ?? '',
      form: culture ? 'culture' : text.form === '' ? null : text.form,
      strains,
      blendTotalPerPiece: culture ? null : total,
      guaranteed: culture || text.guaranteed === '' ? null : text.guaranteed,
      receivedFrom: culture ? lineOrNull(text.receivedFrom) : null,
      knownGenerations: culture ? taking.take('generations', reader.whole(text.generations, 100_000)) : null,
      note: lineOrNull(text.note),
    },
    problems: taking.problems,
  };
}

/** `of` in the fields is a source's id, "milk" or "addition". */
export function packageText(of: string, name: string, found: Package | null, writer: Writer): PackageText {
  return {
    of: found ? (found.of === 'source' ? (found.source ?? '') : found.of) : of,
    name: found?.name ?? name,
    size: found?.size ? writer.amount(found.size) : '',
    price: found?.price ? (found.price.typed ?? `${found.price.minor / 100} ${found.price.currency}`) : '',
    boughtOn: found?.boughtOn ? writer.day(found.boughtOn) : '',
    openedOn: found?.openedOn ? writer.day(found.openedOn) : '',
    bestBefore: found?.bestBefore ? writer.day(found.bestBefore) : '',
    note: found?.note ?? '',
  };
}

/** Reads a package. */
export function readPackage(
  text: PackageText,
  id: string | null,
  reader: Reader,
): { readonly package: Omit<Package, 'id'> & { readonly id: string | null }; readonly problems: Problems } {
  const taking = new Taking();
  const name = lineOrNull(text.name);
  if (name === null) taking.say('name', 'Say what is in it, such as “whole milk”.');
  const kind = text.of === 'milk' || text.of === 'addition' ? text.of : 'source';
  const boughtOn = taking.take('boughtOn', reader.day(text.boughtOn));
  const openedOn = taking.take('openedOn', reader.day(text.openedOn));
  if (boughtOn !== null && openedOn !== null && openedOn < boughtOn)
    taking.say('openedOn', 'It was opened before it was bought. Please correct one of the days.');
  return {
    package: {
      id,
      of: kind,
      source: kind === 'source' ? text.of : null,
      name: name ?? '',
      size: taking.take('size', reader.amount(text.size, kind === 'source' ? 'pieces' : undefined)),
      price: taking.take('price', reader.price(text.price)),
      boughtOn,
      openedOn,
      bestBefore: taking.take('bestBefore', reader.day(text.bestBefore, true)),
      note: lineOrNull(text.note),
    },
    problems: taking.problems,
  };
}

/**
 * What one piece, 100 g or a litre of a package costs, in words: "0.31 EUR a piece". To the smallest coin.
 * @returns null where size or price is not known, or it costs less than that coin
 */
export function pricePerUnit({ price, size }: Pick<Package, 'price' | 'size'>): string | null {
  if (price === null || size === null || size.value <= 0) return null;
  const per = { pieces: [1, 'a piece'], g: [100, 'per 100 g'], mL: [1000, 'a litre'], CFU: null }[
    size.unit
  ] as readonly [number, string] | null;
  if (per === null) return null;
  const [amount, words] = per;
  const minor = Math.round((price.minor / size.value) * amount);
  return minor === 0 ? null : `${printPrice({ ...price, minor })} ${words}`;
}

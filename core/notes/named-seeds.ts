// What a seed may be read as: a jar of the notes or the ledger, or a source.
import type { Seeding, Source } from '../ledger/records';
import type { FoundAmount } from '../quantities/quantities';

/** A jar that a seed may name: of these notes or already in the ledger. */
export interface KnownJar {
  readonly id: string;
  readonly day: string;
  /** Where only a range of days is known, the first: `day` then is the one in the middle. */
  readonly from?: string | null;
  readonly letter: string;
  readonly word: string | null;
  /** Other texts that mean it, plain: a whole label, a name, a number. */
  readonly aliases: readonly string[];
  readonly label: string;
  /** The line of the file that it stands on; of a jar of the ledger none. */
  readonly line?: number;
}

export interface SeedPart {
  /** Whey or curd of the jar, where it is told. */
  readonly part?: Seeding['part'];
  readonly from: { readonly jar: KnownJar } | { readonly source: SourceMention };
  readonly amount: FoundAmount | null;
}

/** What a seed is called: the jar's label, or the source's name. */
export const nameOfSeed = (from: SeedPart['from']): string =>
  'jar' in from ? from.jar.label : from.source.name;

export interface SourceMention {
  readonly name: string;
  readonly form: Source['form'];
  readonly culture: boolean;
  /** Nothing but its place says that it is a product. */
  readonly guessed: boolean;
  readonly unnamed: boolean;
  /** It is called a culture in so many words: nothing to ask. */
  readonly said?: true;
  /** Of a culture: how many generations it is known to have run. */
  readonly generations?: number | null;
}

// Values of records as this keeper reads them: days in the preferred order, amounts as they were typed, others by name.
import type { Amount, Price, Temperature } from '../../../core/ledger/basics';
import { isDay } from '../../../core/ledger/basics';
import { portionName } from '../../../core/ledger/portions';
import { printAmount, printPrice, printTemperature } from '../../../core/quantities/quantities';
import { printDay } from '../../../core/quantities/typed-days';
import type { Ledger } from '../ledger';
import { KIND_WORDS } from '../facts/fact-rows';
import type { FieldType } from './field-types';

const MOMENT = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})/;

const labelOfJar = (ledger: Ledger, key: unknown): string =>
  ledger.index.jars.get(Number(key))?.label ?? 'a jar';

/** Days and moments are told by their form: no keeper's word has it. */
function plainText(ledger: Ledger, value: unknown): string {
  const text = String(value);
  if (isDay(text)) return printDay(text, ledger.preferences.dates);
  const moment = MOMENT.exec(text);
  return moment ? `${printDay(moment[1] ?? '', ledger.preferences.dates)} ${moment[2]}` : text;
}

/** "hold 2": a hold by its place among those of its batch. */
function holdName({ rows }: Ledger, key: number): string {
  const hold = rows.find('hold', key);
  if (!hold || hold.batch === null) return KIND_WORDS.hold;
  return `hold ${rows.where('hold', 'batch', hold.batch).findIndex((one) => one.key === key) + 1}`;
}

/** A value in words, or null where it is not known. */
export function valueWords(ledger: Ledger, type: FieldType, value: unknown): string | null {
  if (value === null || value === undefined) return null;
  switch (type) {
    case 'plain':
      return plainText(ledger, value);
    case 'document':
      return 'kept as it stood';
    case 'flag':
      return value === true ? 'yes' : 'no';
    case 'list':
      return listWords(value as readonly unknown[]);
    case 'amount':
      return (value as Amount).typed ?? printAmount(value as Amount, ledger.preferences);
    case 'temperature':
      return (value as Temperature).typed ?? printTemperature(value as Temperature, ledger.preferences);
    case 'price':
      return printPrice(value as Price);
    case 'jar':
      return labelOfJar(ledger, value);
    case 'hold':
      return holdName(ledger, Number(value));
    case 'portion': {
      const portion = ledger.rows.find('portion', Number(value));
      return portion ? portionName(portion) : KIND_WORDS.portion;
    }
    case 'source':
    case 'package':
      return ledger.rows.find(type, Number(value))?.name ?? KIND_WORDS[type];
    default:
      return KIND_WORDS[type];
  }
}

interface StrainLike {
  readonly genus?: string;
  readonly species?: string;
  readonly designation?: string;
}

function listWords(list: readonly unknown[]): string | null {
  if (list.length === 0) return null;
  const words = list.map((one) => {
    if (typeof one === 'string') return one;
    const { genus, species, designation } = one as StrainLike;
    return [genus, species, designation].filter(Boolean).join(' ');
  });
  return words.every((word) => word !== '') ? words.join(', ') : `${list.length} readings`;
}

// The gate of one jar as four cells: set, sour and clean, what was seen, power. Pure.
import { DISCARD_SIGNS, type DiscardSign } from '../../core/ledger/records';
import type { Reader } from '../parts/reading';
import { signsOf, type OutcomeText } from './outcome-text';

export interface GateCells {
  readonly setAtTakeOut: string;
  readonly sour: string;
  /** "none", or signs with commas between them. */
  readonly signs: string;
  /** "no", "yes", or for how long. */
  readonly power: string;
}

/** The sign that the gate itself adds is worked out, never typed. */
const TYPED_SIGNS: readonly DiscardSign[] = DISCARD_SIGNS.filter(
  (sign) => sign !== 'not set and no pH at or below 4.6',
);
export const SIGN_WORDS: readonly string[] = ['none', ...TYPED_SIGNS, 'spoiled'];

/** An outcome's gate, as its cells show it. */
export function gateText(text: OutcomeText): GateCells {
  const seen = [...signsOf(text), ...(text.spoiledSaid ? ['spoiled'] : [])];
  return {
    setAtTakeOut: text.setAtTakeOut,
    sour: text.sour,
    signs: seen.length > 0 ? seen.join(', ') : text.noneSeen ? 'none' : '',
    power: text.powerCut === 'yes' && text.powerCutHours !== '' ? `${text.powerCutHours} h` : text.powerCut,
  };
}

/** How a curd is called that holds together; what is runny or soft may be milk that has not set. */
export const HOLDS: readonly string[] = ['spoonable', 'firm', 'very firm'];

const yesNo = (typed: string): '' | 'yes' | 'no' | null => {
  const word = typed.trim().toLowerCase();
  return word === '' || word === 'yes' || word === 'no' ? word : null;
};

/** The signs in typed words; null where one of them is none. */
function signsIn(
  typed: string,
): { readonly signs: readonly DiscardSign[]; readonly spoiled: boolean } | null {
  const words = typed
    .toLowerCase()
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
  const signs = words.flatMap((word) => TYPED_SIGNS.find((sign) => sign === word) ?? []);
  const spoiled = words.includes('spoiled');
  return signs.length + (spoiled ? 1 : 0) === words.length ? { signs, spoiled } : null;
}

type GatePart = Pick<
  OutcomeText,
  'setAtTakeOut' | 'sour' | 'signs' | 'noneSeen' | 'bubbles' | 'spoiledSaid' | 'powerCut' | 'powerCutHours'
>;

/** What the cells come to, over an outcome's other answers; `say` is told of a cell that can't be read. */
export function readGate(
  cells: GateCells,
  base: OutcomeText,
  reader: Reader,
  say: (cell: keyof GateCells, sentence: string) => void,
): GatePart {
  const answer = (cell: 'setAtTakeOut' | 'sour'): '' | 'yes' | 'no' => {
    // How firm a curd is says that it is set.
    if (cell === 'setAtTakeOut' && HOLDS.includes(cells[cell].trim().toLowerCase())) return 'yes';
    const read = yesNo(cells[cell]);
    if (read === null)
      say(
        cell,
        cell === 'sour' ? 'Type “yes” or “no”.' : 'Type “yes” or “no”. How firm it is goes under Set.',
      );
    return read ?? '';
  };
  const none = cells.signs.trim().toLowerCase() === 'none';
  const seen = none ? { signs: [], spoiled: false } : signsIn(cells.signs);
  if (seen === null) say('signs', `Type “none”, or what you saw: ${TYPED_SIGNS.join(', ')}.`);
  const power = yesNo(cells.power);
  const hours = power === null ? reader.hours(cells.power) : null;
  if (hours?.ok === false) say('power', 'Type “no”, “yes”, or for how many hours.');
  const signs = seen?.signs ?? [];
  const foam = signs.includes('foam');
  return {
    setAtTakeOut: answer('setAtTakeOut'),
    sour: answer('sour'),
    signs: signs.filter((sign) => sign !== 'foam'),
    noneSeen: none,
    bubbles: foam ? 'foam' : base.bubbles === 'foam' ? '' : base.bubbles,
    spoiledSaid: seen?.spoiled ?? false,
    powerCut: hours?.ok ? 'yes' : (power ?? ''),
    powerCutHours: hours?.ok ? cells.power : power === 'yes' ? base.powerCutHours : '',
  };
}

// What the fields of records are called where a change is told: "set word", "gone on". Pure; screens and history share it.
import type { FactKind } from './facts/all-facts';
import type { RecordKind } from './records';

const WORDS: Readonly<Record<string, string>> = {
  amount: 'how much',
  bestBefore: 'best before',
  blendTotalPerPiece: 'count of all strains in one piece',
  boughtOn: 'bought on',
  countPerMl: 'counted CFU in each mL',
  earlyCheckHours: 'hours to the early check',
  earlyPh: 'pH at the early check',
  earlySet: 'set at the early check',
  earlySour: 'sour at the early check',
  sour: 'smelled sour and clean at take-out',
  endedAt: 'ended',
  fibreDidThis: 'tint or jelly put down to the fibre',
  finalVolume: 'final volume',
  finalVolumeKnown: 'how the volume is known',
  fromJar: 'from',
  goneOn: 'gone on',
  guaranteed: 'counts are guaranteed to',
  hours: 'hours',
  jarFollowsHours: 'hours in which a jar follows its bath',
  keptOn: 'kept since',
  knownGenerations: 'generations known',
  madeOn: 'made on',
  milkAmount: 'how much milk',
  milkPackage: 'carton',
  mostGenerations: 'generations at most',
  onShelf: 'on the shelf',
  openedDays: 'days after opening',
  openedOn: 'opened on',
  ph: 'pH',
  phHow: 'pH measured with',
  place: 'where it is kept',
  portion: 'from what was kept',
  powerCut: 'power cut during the hold',
  powerCutHours: 'hours of the power cut',
  probe: 'probe sat in the',
  receivedFrom: 'received from',
  reserve: 'kept back as seed',
  seedFreezerDays: 'days that seed may stay in the freezer',
  seedFridgeDays: 'days that seed may stay in the fridge',
  seenAt: 'seen',
  setAfterHours: 'hours at which it was not yet set',
  setAtTakeOut: 'set at take-out',
  setByHours: 'hours by which it was set',
  signs: 'signs of spoiling',
  spoiledSaid: 'said to be spoiled',
  startedAt: 'started',
  state: 'made or planned',
};

/** "finalVolumeKnown" → "how the volume is known"; a field without words of its own is taken apart: "set word". */
export function fieldWords(kind: RecordKind | FactKind, field: string): string {
  if (field === 'planned' && kind === 'hold') return 'planned warmth';
  if (field === 'place' && kind !== 'portion') return kind === 'series' ? 'probe sat in the' : 'place';
  if (field === 'actual') return 'went in';
  return WORDS[field] ?? field.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** Values that say nothing when a record comes or goes: what every such record has unless someone said otherwise. */
export const saysNothing = (field: string, value: string): boolean =>
  (value === 'no' && ['spoiledSaid', 'fibreDidThis', 'reserve'].includes(field)) ||
  (field === 'basis' && value === 'recorded') ||
  (field === 'state' && value === 'made');

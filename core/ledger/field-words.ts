// What the fields of records are called where a change is told: "set word", "gone on". Pure; screens and history share it.
import type { FactKind } from './facts/all-facts';
import { JAR_FIELDS, OUTCOME_FIELDS, type JarField } from './jar-fields';
import type { RecordKind } from './records';

/** "How much milk" → "how much milk"; "pH" keeps its letters. */
const inWords = (fields: Readonly<Record<string, JarField>>): Record<string, string> =>
  Object.fromEntries(
    Object.entries(fields).map(([field, { label, history }]) => [field, history ?? label.toLowerCase()]),
  );

const WORDS: Readonly<Record<string, string>> = {
  ...inWords(JAR_FIELDS),
  ...inWords(OUTCOME_FIELDS),
  amount: 'how much',
  bestBefore: 'best before',
  blendTotalPerPiece: 'count of all strains in one piece',
  boughtOn: 'bought on',
  endedAt: 'ended',
  fibreDidThis: 'tint or jelly put down to the fibre',
  fromJar: 'from',
  goneOn: 'gone on',
  guaranteed: 'counts are guaranteed to',
  hours: 'hours',
  jarFollowsHours: 'hours in which a jar follows its bath',
  keptOn: 'kept since',
  knownGenerations: 'generations known',
  madeFrom: 'made no earlier than',
  madeOn: 'made on',
  madeTo: 'made no later than',
  milkPackage: 'carton',
  mostGenerations: 'generations at most',
  onShelf: 'on the shelf',
  openedOn: 'opened on',
  place: 'where it is kept',
  portion: 'from what was kept',
  probe: 'probe sat in the',
  receivedFrom: 'received from',
  reserve: 'kept back as seed',
  seedFreezerDays: 'days that seed may stay in the freezer',
  seedFridgeDays: 'days that seed may stay in the fridge',
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

// What the invented kitchen has bought, been given and put aside. Products, strains, designations and prices are invented.
import { NEUTRAL_LIMITS } from '../ledger/default-preferences';
import type { Package, Preferences, Source } from '../ledger/records';
import type { AdditionName, DemoLaterLook, DemoPortion, SourceName } from './scenario-shapes';

/** The day on which the scenario ends: "today" in the invented ledger. */
export const DEMO_TODAY = '2026-05-03';
/** Its morning, whenever it is opened: the real day would make every jar of it months old. */
export const DEMO_NOW = `${DEMO_TODAY}T10:00:00+01:00`;
/** Where the invented kitchen is: its clock goes by this zone, wherever it is visited. */
export const DEMO_ZONE = 'Europe/London';

export const preferences: Preferences = {
  theme: 'system',
  temperatures: '°C',
  volumes: 'metric',
  spoons: 'metric',
  dates: 'day first',
  currency: 'GBP',
  ...NEUTRAL_LIMITS,
};

type DemoSource = Omit<Source, 'id'> & { readonly name: SourceName };

export const sources: readonly DemoSource[] = [
  {
    name: 'Blue Tin',
    form: 'capsules',
    strains: [
      { genus: 'Limosilactobacillus', species: 'reuteri', designation: 'Plot 7', countPerPiece: 2e9 },
      { genus: 'Lactiplantibacillus', species: 'plantarum', designation: 'Plot 12', countPerPiece: 1e9 },
    ],
    blendTotalPerPiece: null,
    guaranteed: 'expiry',
    receivedFrom: null,
    knownGenerations: null,
    note: 'An invented product.',
  },
  {
    name: 'Meadow Pot',
    form: 'capsules',
    strains: [
      { genus: 'Limosilactobacillus', species: 'reuteri', designation: 'Plot 7', countPerPiece: null },
      { genus: 'Lacticaseibacillus', species: 'rhamnosus', designation: 'Plot 31', countPerPiece: null },
    ],
    blendTotalPerPiece: 4e9,
    guaranteed: 'manufacture',
    receivedFrom: null,
    knownGenerations: null,
    note: 'An invented product. The label gives only the total of both strains.',
  },
  {
    name: 'Hillside pot',
    form: 'culture',
    strains: [],
    blendTotalPerPiece: null,
    guaranteed: null,
    receivedFrom: 'the hillside allotment club',
    knownGenerations: null,
    note: 'An invented club. Nobody knows what was in it at the start.',
  },
];

interface DemoPackage extends Pick<
  Package,
  'of' | 'name' | 'size' | 'price' | 'boughtOn' | 'openedOn' | 'bestBefore'
> {
  readonly source: SourceName | null;
  /** The addition that is taken from this package. */
  readonly addition: AdditionName | null;
}

const bag = (addition: AdditionName, grams: number, pence: number, day: string): DemoPackage => ({
  of: 'addition',
  source: null,
  addition,
  name: `${addition}, ${grams} g bag`,
  size: { value: grams, unit: 'g', typed: `${grams} g` },
  price: { minor: pence, currency: 'GBP', typed: null },
  boughtOn: day,
  openedOn: day,
  bestBefore: null,
});

const box = (source: SourceName, capsules: number, pence: number): DemoPackage => ({
  of: 'source',
  source,
  addition: null,
  name: `${source}, ${capsules} capsules`,
  size: { value: capsules, unit: 'pieces', typed: `${capsules} capsules` },
  price: { minor: pence, currency: 'GBP', typed: null },
  boughtOn: '2025-10-17',
  openedOn: '2025-10-19',
  bestBefore: '2026-12-31',
});

export const packages: readonly DemoPackage[] = [
  box('Blue Tin', 45, 1850),
  box('Meadow Pot', 24, 1240),
  bag('acacia fibre', 250, 680, '2025-10-31'),
  bag('potato starch', 500, 240, '2025-10-31'),
  bag('chicory inulin', 500, 720, '2025-11-14'),
  bag('oat bran', 750, 190, '2025-12-12'),
];

export const portions: readonly DemoPortion[] = [
  {
    name: 'Lantern cubes',
    jar: '2025-11-26 a',
    part: 'mixed',
    place: 'freezer',
    pieces: 8,
    amount: { value: 120, unit: 'mL', typed: '8 cubes of 15 ml' },
    keptOn: '2025-11-29',
    goneOn: null,
    reserve: true,
    note: 'Three were thawed for 11 Mar c.',
  },
  {
    name: 'Heron cubes',
    jar: '2025-11-30 a',
    part: 'mixed',
    place: 'freezer',
    pieces: 12,
    amount: { value: 180, unit: 'mL', typed: '12 cubes of 15 ml' },
    keptOn: '2025-12-03',
    goneOn: null,
    reserve: true,
    note: null,
  },
  {
    name: 'Heron lidded pot',
    jar: '2026-04-05 a',
    part: 'mixed',
    place: 'fridge',
    pieces: null,
    amount: { value: 100, unit: 'mL', typed: '100 ml' },
    keptOn: '2026-04-08',
    goneOn: null,
    reserve: true,
    note: 'Filled first, never eaten from.',
  },
];

export const laterLooks: readonly DemoLaterLook[] = [
  {
    jar: '2026-04-01 c',
    on: '2026-04-16',
    signs: ['pink'],
    openedDays: 1,
    note: 'A pink ring under the lid. Thrown out whole, nobody tasted it.',
  },
];

/** Notes that nobody has answered yet on the last morning of the scenario. */
export const leftUnread: readonly string[] = [
  'A pink ring under the lid. Thrown out whole, nobody tasted it.',
  'Taster B: is it us or is it the culture?',
  'Two small jars for the seedling sale.',
];

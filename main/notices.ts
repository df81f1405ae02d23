// Which of the things that today asks for the system is told of: each once, when it falls due; what fell due while the program
// was not running is told at the next start with how late. No electron here.
import type { Reply } from '../core/contract';

type Item = Reply<'today.list'>['items'][number];

export interface Notice {
  readonly id: string;
  readonly title: string;
  readonly body: string;
}

/** So many ids are remembered: far more than can be due at once. */
const REMEMBERED = 200;

/** What is due and was not told of yet. @param told ids of what was */
const noticesOf = (items: readonly Item[], told: readonly string[]): Notice[] =>
  items
    .filter(({ id, due }) => due && !told.includes(id))
    .map(({ id, title, rest }) => ({ id, title, body: rest }));

/** The ids to remember from now on. */
const nowTold = (told: readonly string[], notices: readonly Notice[]): string[] =>
  [...told, ...notices.map(({ id }) => id)].slice(-REMEMBERED);

interface Doors {
  /** What today asks for; null while no ledger of the keeper's own is open. */
  readonly today: () => Promise<readonly Item[] | null>;
  readonly told: () => readonly string[];
  readonly keep: (told: readonly string[]) => void;
  readonly show: (notice: Notice) => void;
}

/** A look at what is due: tells of what was not told of. Looks that overlap tell of nothing twice. */
export const noticer =
  ({ today, told, keep, show }: Doors): (() => Promise<void>) =>
  async () => {
    const items = await today();
    if (items === null) return;
    const fresh = noticesOf(items, told());
    if (fresh.length === 0) return;
    // Kept before it is shown: told once too few is on the strip all the same, told again and again is a nuisance.
    keep(nowTold(told(), fresh));
    for (const notice of fresh) show(notice);
  };

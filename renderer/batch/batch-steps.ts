// Where a batch stands between being made and the last spoonful, and the one thing that is to be done next. Pure.
import { isSeenOut } from '../../core/ledger/seen-out';
import type { BatchReply } from '../../core/contract';

/** In the order a batch goes through them. */
export const STEPS = ['planned', 'made', 'in warmth', 'looked at', 'kept', 'used up'] as const;
export type Step = (typeof STEPS)[number];

type Jar = Pick<BatchReply['jars'][number], 'label' | 'outcome' | 'discard' | 'safety'> & {
  readonly jar: Pick<BatchReply['jars'][number]['jar'], 'id' | 'letter' | 'state' | 'onShelf' | 'hold'>;
};

export interface Standing {
  /** The last that is behind it or that it is in. */
  readonly step: Step;
  /** It is behind, and the one after it is yet to be done. */
  readonly over?: boolean;
  readonly next: string;
}

/** "16 May a, b": the letters after the first; of many, how many. */
const named = (jars: readonly Jar[]): string =>
  jars.length > 3
    ? `${jars.length} jars`
    : jars.map(({ label, jar }, at) => (at === 0 ? label : jar.letter)).join(', ');

/**
 * Where it stands.
 * @param warm ids of jars in a hold that runs
 * @param until when they come out, in words, and whether that is past; null where nobody said
 */
export function standingOf(
  jars: readonly Jar[],
  warm: ReadonlySet<string>,
  until: { readonly at: string; readonly over: boolean } | null,
): Standing {
  const made = jars.filter(({ jar }) => jar.state === 'made');
  const planned = jars.filter(({ jar }) => jar.state === 'planned');
  if (made.length === 0)
    return planned.length > 0
      ? { step: 'planned', next: 'Make them, type over what differed, then press Made as planned.' }
      : { step: 'planned', next: 'None of its jars was made.' };
  const stand = made.filter(({ jar }) => jar.onShelf !== false);
  const bad = stand.filter(({ discard }) => discard !== null);
  if (bad.length > 0)
    return {
      step: 'looked at',
      next: `Discard ${named(bad)}: neither food nor seed. Then say that it is gone.`,
    };
  const unseen = stand.filter(({ jar, outcome }) => !isSeenOut(outcome) && !warm.has(jar.id));
  if (unseen.length > 0)
    return {
      // What came out of warmth stays there until all of it is looked at: the way never goes back.
      step: unseen.some(({ jar }) => jar.hold !== null) ? 'in warmth' : 'made',
      over: unseen.some(({ jar }) => jar.hold !== null) && !stand.some(({ jar }) => warm.has(jar.id)),
      next: `Look at ${named(unseen)}, and smell: then type what you saw.`,
    };
  const inWarmth = stand.filter(({ jar }) => warm.has(jar.id));
  if (inWarmth.length > 0)
    return {
      step: 'in warmth',
      next:
        until === null
          ? 'Leave them warm until they set.'
          : until.over
            ? `They were to come out ${until.at}. Take them out, look and smell first.`
            : `In warmth until about ${until.at}.`,
    };
  if (stand.length === 0) return { step: 'used up', next: 'Nothing of it is left.' };
  const held = stand.filter(({ safety }) => safety !== null && !safety.eat);
  return held.length > 0
    ? { step: 'kept', next: `${named(held)}: not to be eaten as it stands. What to do is said at the jar.` }
    : { step: 'kept', next: `${named(stand)} on the shelf. Look and smell first; say when it is gone.` };
}

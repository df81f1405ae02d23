// What a jar descends from that is set aside or condemned. Cautions are not chained: the jar itself may carry none, and the
// keeper should know all the same. Pure.
import type { JarView, Reply } from '../../core/contract';

export interface Held {
  readonly label: string;
  readonly state: 'set aside' | 'condemned';
}

/**
 * Ancestors that are set aside or condemned, the latest made first. A condemned one that this jar's own cautions name
 * already, standing or lifted with a reason, is left out: it has been spoken of.
 * @param views of the ancestors by key, as far as they are here yet; @param cautions this jar's own
 */
export function heldAbove(
  ancestors: readonly number[],
  views: ReadonlyMap<number, Pick<JarView, 'id' | 'label' | 'caution' | 'spoiled' | 'madeOn'>>,
  cautions: readonly Pick<Reply<'jar.get'>['cautions'][number], 'of'>[],
): Held[] {
  const spoken = new Set(cautions.map(({ of }) => of));
  return ancestors
    .flatMap((key) => views.get(key) ?? [])
    .filter(
      (one) =>
        !spoken.has(one.id) && (one.spoiled || one.caution === 'set aside' || one.caution === 'condemned'),
    )
    .toSorted((a, b) => (b.madeOn ?? '').localeCompare(a.madeOn ?? '') || a.label.localeCompare(b.label))
    .map(({ label, spoiled, caution }) => ({
      label,
      state: spoiled || caution === 'condemned' ? 'condemned' : 'set aside',
    }));
}

const NAMED = 3;

/** "Descends from 4 Jan c, which is set aside." */
export function heldAboveSays(held: readonly Held[]): string {
  const part = (state: Held['state']): string | null => {
    const labels = held.filter((one) => one.state === state).map(({ label }) => label);
    if (labels.length === 0) return null;
    const named =
      labels.length > NAMED
        ? `${labels.slice(0, NAMED).join(', ')} and ${labels.length - NAMED} more`
        : [labels.slice(0, -1).join(', '), labels.at(-1)].filter(Boolean).join(' and ');
    return `${named}, which ${labels.length === 1 ? 'is' : 'are'} ${state}`;
  };
  return `Descends from ${[part('condemned'), part('set aside')].filter((one) => one !== null).join('; and from ')}.`;
}

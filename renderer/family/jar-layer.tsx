// The jars near the window, as a tree that pointer, keyboard and screen reader walk.
import type { SyntheticEvent } from 'react';
import type { Geometry } from './geometry';
import { Jar } from './jar';
import { type Kin, listOf } from './kin';
import type { Placed } from './lanes';
import type { SeedMark } from './use-advised';
import type { useJars } from './use-jars';
import { indexAt, type Walking } from './use-walking';

interface Props {
  readonly drawing: Placed;
  readonly kin: Kin;
  readonly geometry: Geometry;
  readonly cornerX: number;
  readonly cornerY: number;
  readonly mounted: readonly number[];
  readonly views: ReturnType<typeof useJars>;
  readonly scores: ReadonlyMap<number, number | null>;
  readonly seeds: ReadonlyMap<number, SeedMark>;
  readonly inWarmth: ReadonlySet<number>;
  readonly lit: Uint8Array | null;
  readonly selected: number | null;
  readonly walking: Walking;
  readonly onPoint: (index: number | null) => void;
  readonly onSelect: (index: number) => void;
}

export function JarLayer(props: Props) {
  const { walking, onPoint, onSelect } = props;
  const press = (event: SyntheticEvent): void => {
    const index = indexAt(event.target);
    if (index === null) return;
    walking.focusOn(index);
    onSelect(index);
  };
  return (
    <g
      role="tree"
      aria-label="The family, from each jar to what it seeded"
      tabIndex={-1}
      onKeyDown={walking.onKeyDown}
      onPointerOver={(event) => onPoint(indexAt(event.target))}
      onPointerLeave={() => onPoint(null)}
      onClick={press}
      onFocus={walking.onFocus}
      onBlur={walking.onBlur}
    >
      {props.mounted.map((index) => (
        <JarAt key={props.drawing.keys[index] ?? 0} {...props} index={index} />
      ))}
    </g>
  );
}

/** A jar of the drawing, with what is known of it. */
function JarAt({ index, ...of }: Props & { readonly index: number }) {
  const { drawing, kin, geometry, cornerX, cornerY, views, lit } = of;
  const key = drawing.keys[index] ?? 0;
  const seen = views.get(key);
  const seed = kin.parent[index] ?? -1;
  return (
    <Jar
      jarKey={key}
      index={index}
      x={(drawing.x[index] ?? 0) * geometry.columnStep - cornerX}
      y={(drawing.y[index] ?? 0) * geometry.rowStep - cornerY}
      generation={drawing.generation[index] ?? 0}
      setWord={drawing.setWord[index] ?? 255}
      flags={drawing.flags[index] ?? 0}
      label={seen?.label ?? ''}
      also={alsoSeeds(seen?.seeds ?? [], seed >= 0 ? (drawing.keys[seed] ?? null) : null)}
      level={kin.level[index] ?? 1}
      place={kin.place[index] ?? 1}
      siblings={seed >= 0 ? listOf(kin.children, seed).length : kin.roots.length}
      lit={lit?.[index] === 1}
      tabbable={index === of.walking.focus}
      selected={index === of.selected}
      score={of.scores.get(key) ?? null}
      next={of.seeds.has(key)}
      warm={of.inWarmth.has(key)}
    />
  );
}

/** "also seeded by 10 Mar a, Blue Tin": the seeds a tree can't show. */
function alsoSeeds(
  seeds: readonly { readonly key: number | null; readonly label: string }[],
  hangsFrom: number | null,
): string {
  const others = seeds
    .filter((seed) => seed.key === null || seed.key !== hangsFrom)
    .map((seed) => seed.label);
  if (others.length === 0) return '';
  return `${hangsFrom === null ? 'started from' : 'also seeded by'} ${others.join(' and ')}`;
}

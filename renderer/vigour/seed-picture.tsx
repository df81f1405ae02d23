// What a seed looks like: the jar as it set, cubes, a lidded pot or flakes, or for a fresh start a packet. Decoration.
import { call } from '../state/ledger-calls';
import { useEffect, useState, type ReactNode } from 'react';
import type { Reply } from '../../core/contract';
import { JarPicture } from '../parts/jar-shape';
import { lookOf } from '../parts/jar-look';
import { CubesShape, PacketShape, PotShape } from '../parts/kept-shapes';

type Ranked = Reply<'advice.next'>['ranking'][number];
type Jar = Reply<'jar.get'>;

/** The jars of these seeds, by id, as far as they are here. */
export function useSeedJars(ids: readonly string[]): ReadonlyMap<string, Jar> {
  const [jars, hold] = useState<ReadonlyMap<string, Jar>>(new Map());
  const asked = [...new Set(ids)].join(' ');
  useEffect(() => {
    let current = true;
    const wanted = asked.split(' ').filter(Boolean);
    void Promise.all(wanted.map((id) => call('jar.get', { id }))).then((answers) => {
      if (!current) return;
      hold(new Map(answers.flatMap((answer) => (answer.ok ? [[answer.value.view.id, answer.value] as const] : []))));
    });
    return () => {
      current = false;
    };
  }, [asked]);
  return jars;
} // prettier-ignore

const Picture = ({ children }: { readonly children?: ReactNode }) => (
  <svg className="seed-picture" viewBox="0 0 62 62" aria-hidden="true">
    {children}
  </svg>
);

export function SeedPicture({ ranked, jar }: { readonly ranked: Ranked; readonly jar: Jar | undefined }) {
  if (ranked.jar === null)
    return (
      <Picture>
        <PacketShape />
      </Picture>
    );
  if (!jar) return <Picture />;
  const kept = jar.record.portions.find(({ id }) => id === ranked.portion);
  if (kept) return <Picture>{kept.place === 'fridge' ? <PotShape /> : <CubesShape />}</Picture>;
  const { deepest, atLeast } = jar.view.generation;
  return <JarPicture generation={deepest} {...lookOf(jar.view, atLeast)} />;
}

// What a seed looks like: the jar as it set, cubes, a lidded pot or flakes, or for a fresh start a packet. Decoration.
import { call } from '../state/ledger-calls';
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import { JarPicture } from '../parts/jar-shape';
import { lookOf } from '../parts/jar-look';

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

const Cubes = () => (
  <svg className="seed-picture" viewBox="0 0 62 62" aria-hidden="true">
    {[0, 1, 2].flatMap((row) =>
      [0, 1, 2].map((column) => (
        <g key={`${row} ${column}`} transform={`translate(${3 + column * 19} ${3 + row * 19})`}>
          <rect className="cube" width="17" height="17" rx="4" />
          <path className="cube-light" d="M4 5H10" />
        </g>
      )),
    )}
  </svg>
);

const Pot = () => (
  <svg className="seed-picture" viewBox="0 0 62 62" aria-hidden="true">
    <rect className="pot-lid" x="6" y="14" width="50" height="9" rx="4" />
    <circle className="pot-lid" cx="31" cy="11" r="5" />
    <path className="cube" d="M10 24H52V46Q52 54 44 54H18Q10 54 10 46Z" />
  </svg>
);

const Packet = () => (
  <svg className="seed-picture" viewBox="0 0 62 62" aria-hidden="true">
    <path className="seed-packet" d="M7 12L12 8L17 12L22 8L27 12L32 8L37 12L42 8L47 12L52 8L55 12V56H7Z" />
    <rect className="seed-cell" x="15" y="24" width="13" height="11" rx="3" />
    <rect className="seed-cell" x="33" y="24" width="13" height="11" rx="3" />
  </svg>
);

export function SeedPicture({ ranked, jar }: { readonly ranked: Ranked; readonly jar: Jar | undefined }) {
  if (ranked.jar === null) return <Packet />;
  if (!jar) return <svg className="seed-picture" viewBox="0 0 62 62" aria-hidden="true" />;
  const kept = jar.record.portions.find(({ id }) => id === ranked.portion);
  if (kept) return kept.place === 'fridge' ? <Pot /> : <Cubes />;
  const { deepest, atLeast } = jar.view.generation;
  return <JarPicture generation={deepest} {...lookOf(jar.view, atLeast)} />;
}

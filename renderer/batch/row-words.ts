// What a batch comes to in one line of the list. Pure.
import type { Reply } from '../../core/contract';

type Row = Reply<'batch.list'>['batches'][number];

/**
 * The line in parts, the worst first: each jar is counted once, as spoiled, set aside, or by how it turned out.
 * `caution` marks the parts that must not be overlooked.
 */
export function rowWords({
  jars,
}: Pick<Row, 'jars'>): readonly { readonly says: string; readonly caution: boolean }[] {
  const spoiled = jars.filter((jar) => jar.spoiled);
  const held = jars.filter((jar) => !jar.spoiled && jar.caution === 'set aside');
  const unmade = jars.filter((jar) => jar.generation === null).length;
  const rest = jars.filter((jar) => jar.generation !== null && !jar.spoiled && jar.caution !== 'set aside');
  const unknown = rest.filter((jar) => jar.setWord === null).length;
  const words = [...new Set(rest.flatMap((jar) => (jar.setWord === null ? [] : [jar.setWord as string])))];
  const calm = (says: string) => ({ says, caution: false });
  return [
    calm(jars.length === 1 ? 'one jar' : `${jars.length} jars`),
    ...(spoiled.length > 0 ? [{ says: `${spoiled.length} spoiled`, caution: true }] : []),
    ...(held.length > 0 ? [{ says: `${held.length} set aside`, caution: true }] : []),
    ...words.map(calm),
    ...(unmade === 0 ? [] : [calm(unmade === jars.length ? 'planned' : `${unmade} only planned`)]),
    ...(unknown === 0 ? [] : [calm(unknown === jars.length ? 'outcome unknown' : `${unknown} unknown`)]),
  ];
}

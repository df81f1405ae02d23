// Seeds that are spoiled, set aside, or without their acid: found again when a form is recorded, however they came into
// it, and asked about.
import type { Reply } from '../../core/contract';
import { discardWord, setAsideSentence, stopsSaid } from '../../core/says/safety-says';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import type { BatchText, SeedText } from './batch-text';

type Caution = Pick<Reply<'jar.get'>['cautions'][number], 'of' | 'level' | 'cleared' | 'label'>;

/** The spoiled jars, by label, because of which a jar is set aside. */
export const holdsBecauseOf = (cautions: readonly Caution[]): readonly string[] =>
  cautions.flatMap(({ level, cleared, label }) => (!cleared && level === 'set aside' ? [label] : []));

/** Ids of the jars that are picked as seeds. */
export const pickedJars = (seeds: readonly SeedText[]): readonly string[] =>
  seeds.flatMap(({ picked }) => (picked?.kind === 'jar' ? [picked.id] : []));

/** Ids of the jars that seed a new batch's jars. */
export const seedsOfBatch = ({ all, jars }: BatchText): readonly string[] => [
  ...new Set(jars.flatMap((jar) => pickedJars(jar.seeds ?? all.seeds))),
];

/** A sentence for each of those jars that is spoiled or set aside now, or without its acid. */
export async function askAboutSeeds(ids: readonly string[]): Promise<readonly string[]> {
  const answers = await Promise.all([...new Set(ids)].map((id) => call('jar.get', { id })));
  return answers.flatMap((answer) => {
    if (!answer.ok) {
      say(answer.sentence, 'caution');
      return [];
    }
    const { view, cautions, record } = answer.value;
    const because = holdsBecauseOf(cautions);
    return [
      // Only of a day before it was known that may be so, and the rule book says so.
      ...(view.caution === 'condemned'
        ? [
            `${view.label}: ${discardWord(view.discard ?? 'spoiled')}. Only of a day before anyone saw that it can be said to have seeded anything.`,
          ]
        : []),
      ...(because.length > 0 ? [setAsideSentence(view.label, because)] : []),
      ...(record.safety === null ? [] : stopsSaid(record.safety).map((says) => `${view.label}: ${says}`)),
    ];
  });
}

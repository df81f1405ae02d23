// What a new batch's fields begin with: empty, or as last time with the seed that was chosen or is advised. Asks the
// ledger through the function it is given.
import { batchWords } from './batch-days';
import type { ReadName } from '../../core/call-names';
import type { Input, Reply } from '../../core/contract';
import { portionName } from '../../core/ledger/portions';
import type { Answer } from '../state/ledger-calls';
import { repeatBatch, withKept } from './batch-repeat';
import type { Writer } from '../parts/reading';
import { goOn, namesAgain } from './numbered-jars';
import { emptyBatch, noSeed, pickSeed, type BatchText, type SeedText } from './batch-text';

export type Ask = <N extends ReadName>(name: N, input: Input<N>) => Promise<Answer<Reply<N>>>;

/** How a new batch is begun: from nothing, as the last one or another one again, or from a seed. */
export type Begin =
  | { readonly as: 'empty' }
  | { readonly as: 'last' }
  | { readonly as: 'again'; readonly batch: string }
  | { readonly as: 'seeded'; readonly jar: string; readonly portion: string | null };

export interface Begun {
  readonly text: BatchText;
  /** Label of the batch that is made again; null where it begins from nothing or from a seed. */
  readonly repeated: string | null;
  /** What could not be read, or is not there yet. */
  readonly problem: string | null;
}

class NotRead extends Error {}

async function must<N extends ReadName>(ask: Ask, name: N, input: Input<N>): Promise<Reply<N>> {
  const answer = await ask(name, input);
  if (!answer.ok) throw new NotRead(answer.sentence);
  return answer.value;
}

/** A jar as a seed, or what was kept back of it. */
export function seedOf({ view, record }: Reply<'jar.get'>, portion: string | null): SeedText {
  const kept = record.portions.find(({ id }) => id === portion);
  if (!kept) return pickSeed(noSeed, { kind: 'jar', id: view.id, label: view.label });
  const label = withKept(view.label, portionName(kept));
  const pieces = kept.pieces === null ? {} : { pieces: true };
  return pickSeed(
    noSeed,
    { kind: 'jar', id: view.id, label, ...pieces },
    { id: kept.id, part: kept.part ?? '' },
  );
}

/** The seed that is advised for the line that a batch goes on with; null where none is. */
async function advisedSeed(ask: Ask, reply: Reply<'batch.get'>): Promise<SeedText | null> {
  const made = reply.jars.find(({ jar }) => jar.state === 'made');
  if (!made) return null;
  for (const { id } of (await must(ask, 'line.list', { jar: made.jar.id })).lines) {
    const { seed } = await must(ask, 'advice.line', { line: id });
    if (seed?.jar) return seedOf(await must(ask, 'jar.get', { id: seed.jar }), seed.portion);
  }
  return null;
}

const labelOf = ({ batch }: Reply<'batch.get'>, writer: Writer): string => batchWords(batch, writer);

/** The newest batch of the line that a jar belongs to; without a line of its own the newest of all. */
async function lastBatchOf(ask: Ask, jar: string | null): Promise<string | null> {
  const lines = jar === null ? [] : (await must(ask, 'line.list', { jar })).lines;
  return lines.find(({ newestBatch }) => newestBatch !== null)?.newestBatch ?? (await lastMade(ask));
}

/** The newest batch of which something was made: a plan is nothing to do again. */
async function lastMade(ask: Ask): Promise<string | null> {
  let before: Input<'batch.list'>['before'] = null;
  for (;;) {
    const { batches, more }: Reply<'batch.list'> = await must(ask, 'batch.list', { before, limit: 20 });
    const made = batches.find(({ jars }) => jars.some(({ generation }) => generation !== null));
    const last = batches.at(-1);
    if (made || !more || !last) return made?.id ?? null;
    before = { madeOn: last.madeOn, id: last.id };
  }
}

/** As many batches back as names that were given are looked for. */
const NAMES_BACK = 60;

/** The batch with names that go on where its jars are numbered. */
async function withNewNames(ask: Ask, text: BatchText): Promise<BatchText> {
  const names = text.jars.map(({ letter }) => letter);
  if (!goOn(names)) return text;
  const { batches } = await must(ask, 'batch.list', { before: null, limit: NAMES_BACK });
  const known = batches.flatMap(({ jars }) => jars.map(({ label }) => label.split(' ').at(-1) ?? ''));
  const again = namesAgain(names, known);
  return { ...text, jars: text.jars.map((jar, at) => ({ ...jar, letter: again[at] ?? jar.letter })) };
}

/** An empty batch with last time's milk, vessel, amounts and warmth: they seldom change, and may be typed over. */
function asBefore(reply: Reply<'batch.get'>, date: string, writer: Writer): BatchText {
  const last = repeatBatch(reply, date, writer);
  const empty = emptyBatch(date);
  const names = last.jars.map(({ letter }) => letter);
  return {
    ...empty,
    holds: last.holds,
    all: { ...empty.all, milk: last.all.milk },
    jars: goOn(names)
      ? empty.jars.map((jar, at) => ({ ...jar, letter: names[at] ?? jar.letter }))
      : empty.jars,
  };
}

async function begun(begin: Begin, ask: Ask, writer: Writer, date: string): Promise<Begun> {
  const empty = { text: emptyBatch(date), repeated: null, problem: null };
  if (begin.as === 'empty') {
    const before = await lastBatchOf(ask, null);
    return before === null
      ? empty
      : {
          ...empty,
          text: await withNewNames(ask, asBefore(await must(ask, 'batch.get', { id: before }), date, writer)),
        };
  }
  if (begin.as === 'seeded') {
    const seed = seedOf(await must(ask, 'jar.get', { id: begin.jar }), begin.portion);
    const last = await lastBatchOf(ask, begin.jar);
    const text =
      last === null
        ? { ...empty.text, all: { ...empty.text.all, seeds: [seed] } }
        : await withNewNames(
            ask,
            repeatBatch(await must(ask, 'batch.get', { id: last }), date, writer, seed),
          );
    // Its word, if it had one, was said of that batch.
    return { text: { ...text, word: '' }, repeated: null, problem: null };
  }
  const id = begin.as === 'again' ? begin.batch : await lastBatchOf(ask, null);
  if (id === null) return { ...empty, problem: 'There is no batch to repeat yet.' };
  const reply = await must(ask, 'batch.get', { id });
  // A founding batch that is asked for by its day is founded again, from the same products.
  const founding = reply.jars.every(({ seedings }) =>
    seedings.every(({ seeding }) => seeding.fromJar === null),
  );
  const seed = begin.as === 'again' && founding ? null : await advisedSeed(ask, reply);
  const text = await withNewNames(ask, repeatBatch(reply, date, writer, seed));
  return { text, repeated: labelOf(reply, writer), problem: null };
}

/** Never fails: what could not be read is said, and the fields are empty. @param date today, as the keeper writes days */
export async function beginBatch(begin: Begin, ask: Ask, writer: Writer, date: string): Promise<Begun> {
  try {
    return await begun(begin, ask, writer, date);
  } catch (error) {
    if (!(error instanceof NotRead)) throw error;
    return { text: emptyBatch(date), repeated: null, problem: error.message };
  }
}

/** From the focus of the batch screen: "new", "repeat", "repeat:" and a batch, "seed:" and a jar (and "/" and what was kept of it). */
export function beginOf(focus: string | null): Begin | null {
  if (focus === 'new') return { as: 'empty' };
  if (focus === 'repeat') return { as: 'last' };
  const [what, id = ''] = focus?.split(':') ?? [];
  if (what === 'repeat' && id !== '') return { as: 'again', batch: id };
  if (what !== 'seed') return null;
  const [jar = '', portion = ''] = id.split('/');
  return { as: 'seeded', jar, portion: portion === '' ? null : portion };
}

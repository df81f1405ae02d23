// Builds the invented ledger: plays core/demo through the ledger's own calls, each at the moment it is said to have
// been made. Owns no act of its own.
import { type CallName, contract, type Reply, type Result } from '../../core/contract';
import { DEMO_NOW, DEMO_ZONE, leftUnread } from '../../core/demo/invented-larder';
import { demoWrites, type DemoReply } from '../../core/demo/writes';
import { refusalSentence } from '../../core/sentences';
import { type Clock, stillClock } from './clock';

/** Another clock, until it is put somewhere: then it stands there. */
export class PlacedClock implements Clock {
  #at: Clock;
  readonly #timeZone: string | null;

  /** @param timeZone of the moments it is put to, as stillClock takes it */
  constructor(clock: Clock, timeZone: string | null = null) {
    this.#at = clock;
    this.#timeZone = timeZone;
  }

  /** @param timeZone of this moment, where it is another one */
  moveTo(moment: string, timeZone: string | null = this.#timeZone): void {
    this.#at = stillClock(moment, timeZone);
  }

  readonly now = (): string => this.#at.now();
  readonly today = (): string => this.#at.today();
  readonly milliseconds = (): number => this.#at.milliseconds();
  readonly offsetAt = (milliseconds: number): number => this.#at.offsetAt(milliseconds);
}

/**
 * Fills an empty ledger with the invented scenario.
 * @param call one call of the contract, answered by the real handlers
 * @param clock the clock those handlers read. Left standing on the scenario's own last morning: the real day would make
 *   every jar of it months old.
 * @throws Error with the refusal's sentence when a write is refused: then the scenario or a handler is wrong
 */
export function playDemo(
  call: (name: CallName, input: unknown) => Result<unknown>,
  clock: PlacedClock,
): void {
  const writes = demoWrites();
  let step = writes.next({});
  while (!step.done) {
    const { call: name, input, at } = step.value;
    clock.moveTo(at, DEMO_ZONE);
    const result = call(name, contract[name].input.parse(input));
    if (!result.ok) {
      throw new Error(`The invented ledger: ${name} at ${at} was refused. ${refusalSentence(result.error)}`);
    }
    step = writes.next(result.value as DemoReply);
  }
  readNotes((name, input) => {
    const result = call(name, input);
    if (!result.ok)
      throw new Error(`The invented ledger: ${name} was refused. ${refusalSentence(result.error)}`);
    return result.value;
  });
  clock.moveTo(DEMO_NOW, DEMO_ZONE);
}

/** The club has read its notes, but for the newest: none of the others says anything bad. */
function readNotes(call: (name: CallName, input: unknown) => unknown): void {
  const { remarks } = call('remarks.list', { jar: null, unread: true, limit: 1000 }) as Reply<'remarks.list'>;
  const answers = remarks
    .filter(({ text }) => !leftUnread.includes(text))
    .map(({ id }) => ({ id, readAs: 'fine' }));
  call('remarks.answer', { answers, why: null });
}

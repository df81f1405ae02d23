// A recorded jar in words: what it is made of, what was seen of it, whether it may be eaten. Pure.
import { portionName } from '../../core/ledger/portions';
import type { Hold, Outcome } from '../../core/ledger/records';
import { takeOutGate } from '../../core/safety/take-out';
import { eatSentence, lookedSentence } from '../../core/says/safety-says';
import type { Writer } from '../parts/reading';
import { withKept } from './batch-repeat';
import type { Jar } from './record-text';

const list = (parts: readonly (string | null | undefined | false)[], between = ', '): string =>
  parts.filter(Boolean).join(between);

/** "3 tbsp of 14 Mar b, curd (share 60 %)" for each seed; "14 Mar a or 14 Mar b, not sure which" of one that nobody is sure of. */
export function seedWords({ seedings }: Jar, writer: Writer): string {
  const sure = seedings.filter(({ unsure }) => unsure !== true);
  const words = ({ seeding, label, kept, share }: (typeof seedings)[number]): string =>
    list(
      [
        seeding.amount && `${writer.noted(seeding.amount)} of`,
        list([withKept(label, kept), seeding.part !== 'mixed' && seeding.part]),
        share !== null && sure.length > 1 && `(share ${Math.round(share * 100)} %)`,
      ],
      ' ',
    );
  const either = seedings
    .filter(({ unsure }) => unsure === true)
    .map(words)
    .join(' or ');
  return list([...sure.map(words), either !== '' && `${either}, not sure which`]);
}

/** "3 tbsp oat bran (planned 2 tbsp)"; "plain" where nothing was stirred in. */
export const additionWords = ({ additions }: Jar, writer: Writer): string =>
  list(
    additions.map(({ name, actual, planned }) => {
      const [went, was] = [actual && writer.noted(actual), planned && writer.noted(planned)];
      return list(
        [went ?? was, name, went !== null && was !== null && went !== was && `(planned ${was})`],
        ' ',
      );
    }),
  ) || 'plain';

/** "1 qt whole milk, quart jar, 946 ml". How the volume is known stands in its cell. */
export function milkWords({ jar }: Jar, writer: Writer): string {
  const milk = list([jar.milkAmount && writer.noted(jar.milkAmount), jar.milk], ' ');
  return list([milk, jar.vessel, jar.finalVolume && `${writer.noted(jar.finalVolume)} in all`]);
}

/** "6 freezer cubes, a reserve, kept since 20 May" for each portion. */
export const keptWords = ({ portions }: Jar, writer: Writer): string =>
  list(
    portions.map((one) =>
      list([
        list([one.pieces === null ? null : String(one.pieces), portionName(one)], ' '),
        one.reserve && 'a reserve',
        one.amount && writer.noted(one.amount),
        one.goneOn ? `gone on ${writer.day(one.goneOn)}` : `kept since ${writer.day(one.keptOn)}`,
      ]),
    ),
    '; ',
  );

/** What was answered at the gate and what has no cell of its own: "Sour and clean, curd holds; smooth." */
export function seenWords(outcome: Outcome | null): string {
  if (outcome === null) return '';
  const gate = list([
    outcome.sour === true && 'sour and clean',
    outcome.setAtTakeOut === true && 'curd holds',
  ]);
  const words = list([
    outcome.ph !== null && outcome.phHow && `pH by ${outcome.phHow}`,
    outcome.texture,
    outcome.colour,
    outcome.bubbles === 'none' ? 'no bubbles' : outcome.bubbles === 'fine' && 'fine bubbles',
    outcome.fibreDidThis && 'tint or jelly put down to the fibre',
  ]);
  const all = list([gate, words], '; ');
  return all === '' ? '' : `${all.slice(0, 1).toUpperCase()}${all.slice(1)}.`;
}

/** Whether it was taken out today or is not due out before, and passed the gate: then it was looked at today. */
export function passedToday(
  { jar, outcome, additions }: Pick<Jar, 'jar' | 'outcome' | 'additions'>,
  holds: readonly Hold[],
  madeOn: string,
  today: string,
): boolean {
  if (outcome === null || outcome.sour !== true) return false;
  const hold = holds.find(({ id }) => id === jar.hold);
  const begun = Date.parse(hold?.startedAt ?? madeOn);
  const out = hold?.endedAt ?? new Date(begun + (hold?.hours ?? 0) * 3_600_000).toISOString();
  const names = additions.map(({ name }) => name);
  return (
    out.slice(0, 10) >= today && takeOutGate(outcome, outcome.seenAt === 'take-out', names).verdict === 'open'
  );
}

/** Whether it may be eaten; null where that is said otherwise, or there is nothing left to eat. */
export function eatsWords(record: Jar, holds: readonly Hold[], madeOn: string, today: string): string | null {
  const { safety, discard, jar } = record;
  if (safety === null || discard !== null || jar.state !== 'made' || jar.onShelf === false) return null;
  return passedToday(record, holds, madeOn, today) ? lookedSentence(safety) : eatSentence(safety);
}

// What was noted of a jar, as name and value: only what is there. Amounts as the keeper typed them. Pure.
import type { Reply } from '../../core/contract';
import type { Amount } from '../../core/ledger/basics';
import { holdHours } from '../../core/ledger/hold-hours';
import { JAR_FIELDS, OUTCOME_FIELDS, type JarField } from '../../core/ledger/jar-fields';
import type { Outcome, Preferences } from '../../core/ledger/records';
import { printNoted, printNotedTemperature, volumeKnown } from '../../core/quantities/printing';

type JarReply = Reply<'jar.get'>;
type Print = (one: Amount | null) => string | null;

/** The rows that the table of fields has in the pane. */
const inPane = (
  fields: Readonly<Record<string, JarField>>,
  of: object | null,
): readonly [string, string | null][] =>
  Object.entries(fields).flatMap(([field, { pane }]) => {
    const value: unknown = (of as Readonly<Record<string, unknown>> | null)?.[field] ?? null;
    const says = typeof value === 'boolean' ? (value ? 'yes' : 'no') : value === null ? null : String(value);
    return pane === undefined ? [] : [[pane, says]];
  });

const phWords = ({ ph, phHow }: Outcome): string | null =>
  ph === null ? null : `${ph}${phHow === null ? '' : ` (${phHow})`}`;

function additionWords(addition: JarReply['record']['additions'][number], amount: Print): string {
  const [planned, actual] = [amount(addition.planned), amount(addition.actual)];
  if (planned !== null && actual !== null && planned !== actual)
    return `${actual} of ${addition.name} (${planned} planned)`;
  const one = actual ?? (planned === null ? null : `${planned} planned`);
  return one === null ? addition.name : `${one} ${addition.name}`;
}

/** Rows for the pane, in the order a keeper works; what was worked out is rounded, as the batch screen shows it. */
export function recordRows({ record, hold }: JarReply, preferences: Preferences): [string, string][] {
  const amount: Print = (one) => (one === null ? null : printNoted(one, preferences));
  const { jar, additions, outcome } = record;
  const milk = [amount(jar.milkAmount), jar.milk].filter((part) => part !== null).join(' ');
  const hours = hold === null ? null : holdHours(hold);
  const held = hours === null ? null : `${Math.round(hours * 10) / 10} h`;
  const rows: [string, string | null][] = [
    ['Milk', milk || null],
    ['Stirred in', additions.map((one) => additionWords(one, amount)).join(', ') || null],
    ...inPane(JAR_FIELDS, jar),
    [
      'Final volume',
      jar.finalVolume === null
        ? null
        : [amount(jar.finalVolume), volumeKnown(jar.finalVolumeKnown, jar.finalVolume)]
            .filter((part) => part !== null)
            .join(', '),
    ],
    [
      'Held warm',
      [held, hold?.planned ? printNotedTemperature(hold.planned, preferences) : null]
        .filter((part) => part !== null)
        .join(' at ') || null,
    ],
    ...inPane(OUTCOME_FIELDS, outcome === null ? null : { ...outcome, ph: phWords(outcome) }),
    ['Seen', outcome && outcome.signs.length > 0 ? outcome.signs.join(', ') : null],
    [
      'Note',
      [jar.note, outcome?.note ?? null].filter((part) => part !== null && part !== '').join(' · ') || null,
    ],
  ];
  return rows.flatMap(([name, value]) => (value === null ? [] : [[name, value] as [string, string]]));
}

// What was noted of a jar, as name and value: only what is there. Amounts as the keeper typed them. Pure.
import type { Reply } from '../../core/contract';

type JarReply = Reply<'jar.get'>;
interface Typed {
  readonly value: number;
  readonly unit: string;
  readonly typed: string | null;
}
const amount = (one: Typed | null): string | null =>
  one === null ? null : (one.typed ?? `${one.value} ${one.unit}`);
const yesNo = (value: boolean | null, yes: string, no: string): string | null =>
  value === null ? null : value ? yes : no;

function additionWords(addition: JarReply['record']['additions'][number]): string {
  const [planned, actual] = [amount(addition.planned), amount(addition.actual)];
  if (planned !== null && actual !== null && planned !== actual)
    return `${actual} of ${addition.name} (${planned} planned)`;
  const one = actual ?? (planned === null ? null : `${planned} planned`);
  return one === null ? addition.name : `${one} ${addition.name}`;
}

/** Rows for the pane, in the order a keeper works. */
export function recordRows({ record, hold }: JarReply): [string, string][] {
  const { jar, additions, outcome } = record;
  const milk = [amount(jar.milkAmount), jar.milk].filter((part) => part !== null).join(' ');
  const held =
    hold === null
      ? null
      : hold.hours !== null
        ? `${hold.hours} h`
        : hold.startedAt && hold.endedAt
          ? `${hold.startedAt} to ${hold.endedAt}`
          : null;
  const rows: [string, string | null][] = [
    ['Milk', milk || null],
    ['Stirred in', additions.map(additionWords).join(', ') || null],
    ['Vessel', jar.vessel],
    [
      'Final volume',
      jar.finalVolume === null
        ? null
        : [amount(jar.finalVolume), jar.finalVolumeKnown].filter((part) => part !== null).join(', '),
    ],
    [
      'Held warm',
      [held, hold?.planned ? amount(hold.planned) : null].filter((part) => part !== null).join(' at ') ||
        null,
    ],
    ['Set', outcome?.setWord ?? null],
    ['Set at take-out', yesNo(outcome?.setAtTakeOut ?? null, 'yes', 'no')],
    [
      'pH',
      outcome?.ph === null || outcome?.ph === undefined
        ? null
        : `${outcome.ph}${outcome.phHow === null ? '' : ` (${outcome.phHow})`}`,
    ],
    ['Texture', outcome?.texture ?? null],
    ['Whey', outcome?.whey ?? null],
    ['Tang', outcome?.tang ?? null],
    ['Smell', outcome?.smell ?? null],
    ['Colour', outcome?.colour ?? null],
    ['Seen', outcome && outcome.signs.length > 0 ? outcome.signs.join(', ') : null],
    [
      'Note',
      [jar.note, outcome?.note ?? null].filter((part) => part !== null && part !== '').join(' · ') || null,
    ],
  ];
  return rows.flatMap(([name, value]) => (value === null ? [] : [[name, value] as [string, string]]));
}

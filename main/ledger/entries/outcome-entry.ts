// An outcome as a form tells it, taken apart into observations, pH values, signs and remarks.
import type { OpenAct } from '../facts/open-act';
import type { Row, Stored as Fact } from '../facts/tables';
import {
  type FormParts,
  formParts,
  isSetAtTakeOut,
  type Observed,
  observedOf,
  outcomeFrom,
  type Seen,
  standing,
} from './outcome-of-jar';
import { put, putRemark, remarkOf, removeAll } from './put-fact';

/** What the form's own observations tell, without what was observed besides. */
const formOnly = ({ early, main, opened }: FormParts): Observed[] =>
  [early, main, opened].filter((one) => one !== undefined).toSorted((a, b) => a.row.key - b.row.key);

/** The form as it shall be: a field that says what all observations say already stays as the form has it. */
function asForm(observed: readonly Observed[], wanted: Seen): Seen {
  const parts = formParts(observed);
  const own = formOnly(parts);
  if (own.length === observed.length) return wanted;
  const [form, all] = [outcomeFrom(own), outcomeFrom(observed)];
  const besides = new Set(
    observed.filter((one) => !own.includes(one)).flatMap((one) => standing(one).map(({ kind }) => kind)),
  );
  const kept = Object.fromEntries(
    Object.entries(wanted).map(([field, value]) => {
      const name = field as keyof Seen;
      const same = JSON.stringify(value) === JSON.stringify(all?.[name] ?? null);
      return [field, same && form ? form[name] : value];
    }),
  ) as unknown as Seen;
  return { ...kept, signs: kept.signs.filter((sign) => !besides.has(sign) || form?.signs.includes(sign)) };
}

type SignKind = Fact<'sign'>['kind'];

/** Signs in their order: those that are there and still wanted stay, and what is new comes after them. */
function putSigns(
  act: OpenAct,
  observation: number,
  there: readonly Row<'sign'>[],
  wanted: readonly (readonly [SignKind, Fact<'sign'>['answer']])[],
): void {
  let at = 0;
  for (const sign of there) {
    if (sign.answer === 'not so') continue;
    if (wanted[at]?.[0] === sign.kind) at++;
    else act.remove('sign', sign.key);
  }
  for (const [kind, answer] of wanted.slice(at)) act.insert('sign', { observation, kind, answer });
}

const signsOf = (seen: Seen): (readonly [SignKind, Fact<'sign'>['answer']])[] => [
  ...seen.signs.map((sign) => [sign, 'seen'] as const),
  ...(seen.spoiledSaid ? [['said spoiled', 'seen'] as const] : []),
];

function putEarly(act: OpenAct, jar: number, there: Observed | undefined, seen: Seen): void {
  const { earlyCheckHours: hoursIn, earlySet: setState, earlyPh: ph, earlySour: sour } = seen;
  if ([hoursIn, setState, ph, sour].every((value) => value === null)) {
    if (there) takeAway(act, there);
    return;
  }
  const key = put(
    act,
    'observation',
    there?.row,
    { hoursIn, setState, sour },
    { jar, stage: 'early' },
  ) as number;
  put(act, 'acidity', there?.acidity[0], ph === null ? null : { ph }, { observation: key, how: 'not said' });
}

function putMain(act: OpenAct, jar: number, there: Observed | undefined, seen: Seen, signs: boolean): void {
  const { setAtTakeOut, sour, setWord, whey, tang, bubbles, setAfterHours, setByHours, powerCut, powerCutHours } = seen; // prettier-ignore
  const atTakeOut = seen.seenAt === 'take-out' || setAtTakeOut !== null;
  // What was seen in finer words than a form has stays where the form says no other.
  const setStays = isSetAtTakeOut(there) === setAtTakeOut && there !== undefined;
  const key = put(
    act,
    'observation',
    there?.row,
    {
      stage: atTakeOut ? 'take-out' : 'not said',
      looked: seen.seenAt === 'take-out' ? true : null,
      ...(setStays ? {} : { setState: setAtTakeOut === null ? null : setAtTakeOut ? 'set' : 'not set' }),
      ...(sour === undefined ? {} : { sour }),
      setWord, whey, tang, bubbles, setAfterHours, setByHours, powerCut, powerCutHours,
    },
    { jar },
  ) as number; // prettier-ignore
  const { ph, phHow, phChecked } = seen;
  const [measured] = there?.acidity ?? [];
  // What the checks of the meter tell is not written down a second time.
  const told = phChecked === undefined || phChecked === measured?.checked ? {} : { checked: phChecked };
  const how = phHow ?? 'not said';
  const reading = { how, ...(how === 'meter' ? told : { checked: null }) } as const;
  put(act, 'acidity', measured, ph === null ? null : { ph, ...reading }, { observation: key });
  for (const field of ['texture', 'smell', 'colour', 'note'] as const)
    putRemark(act, remarkOf(there?.remarks ?? [], field), 'observation', key, seen[field], field);
  putSigns(act, key, there?.signs ?? [], [
    ...(signs ? signsOf(seen) : []),
    ...(seen.fibreDidThis ? [['tint or jelly', 'the fibre'] as const] : []),
  ]);
}

function putOpened(act: OpenAct, jar: number, there: Observed | undefined, seen: Seen): void {
  if (seen.seenAt !== 'after opening') {
    if (there) takeAway(act, there);
    return;
  }
  const key = put(
    act,
    'observation',
    there?.row,
    { daysOpen: seen.openedDays },
    { jar, stage: 'opened', looked: true },
  ) as number;
  putSigns(act, key, there?.signs ?? [], signsOf(seen));
}

/** Takes an observation away with all that hangs on it. */
function takeAway(act: OpenAct, { row, acidity, signs, remarks }: Observed): void {
  removeAll(
    act,
    ...signs.map((sign) => ['sign', sign] as const),
    ...acidity.map((one) => ['acidity', one] as const),
    ...remarks.map((remark) => ['remark', remark] as const),
    ['observation', row],
  );
}

/** Adds what a form tells of a jar of which nothing was observed before: an import need not ask for each. */
export const addOutcome = (act: OpenAct, jar: number, told: Seen): void => putOutcome(act, jar, [], told);

/** What a form tells of a jar now, over what it told before. */
export function changeOutcome(act: OpenAct, jar: number, told: Partial<Seen>): void {
  const observed = observedOf(act.rows, jar);
  const now = outcomeFrom(observed);
  if (now) putOutcome(act, jar, observed, { ...now, ...told });
}

/** Takes away what forms told of a jar. */
export const removeOutcome = (act: OpenAct, jar: number): void =>
  putOutcome(act, jar, observedOf(act.rows, jar), null);

function putOutcome(act: OpenAct, jar: number, observed: readonly Observed[], wanted: Seen | null): void {
  const { early, main, opened } = formParts(observed);
  if (wanted === null) {
    for (const one of formOnly({ early, main, opened })) takeAway(act, one);
    return;
  }
  const seen = asForm(observed, wanted);
  putEarly(act, jar, early, seen);
  putMain(act, jar, main, seen, seen.seenAt !== 'after opening');
  putOpened(act, jar, opened, seen);
}

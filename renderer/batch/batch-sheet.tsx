// The sheet of a new batch: jars side by side, a row for each question, one entry for all at the left of the jars' own.
import { useId, useState, type ReactNode } from 'react';
import { JAR_FIELDS, VOLUMES_KNOWN } from '../../core/ledger/jar-fields';
import { readField } from '../parts/field-text';
import { wordChoices, type Choice } from '../parts/fields';
import type { Reader } from '../parts/reading';
import type { Problems } from '../parts/taking';
import {
  additionRows,
  MILK_FIELDS,
  noAddition,
  recipeOf,
  saysPlain,
  withJars,
  type AdditionText,
  type BatchText,
  type JarText,
  type MilkText,
  type SeedText,
} from './batch-text';
import { PlannedJar } from './planned-jar';
import { SeedRows } from './seed-rows';
import { Cell, SheetRow } from './sheet-cell';
import { withAmountForAll, withName, type Usual } from './usual-amounts';
import type { Packages } from './use-packages';

/** Words that a beginning is filled in to, after those of the ledger. */
const FIBRES = [
  'plain',
  'potato starch',
  'acacia fibre',
  'inulin',
  'oat bran',
  'psyllium husk',
  'green banana flour',
];
const COMMON_WORDS: Partial<Record<keyof MilkText, readonly string[]>> = {
  milk: ['whole milk', 'skimmed milk', 'half-fat milk', 'goat’s milk'],
  vessel: ['quart jar', 'pint jar', 'litre jar', 'half-litre jar'],
};

interface Props {
  readonly text: BatchText;
  readonly onChange: (text: BatchText) => void;
  readonly problems: Problems;
  readonly reader: Reader;
  readonly packages: Packages;
  readonly notAfter: string | null;
}

/** The jar with these parts of its milk its own; an emptied part is as all again. */
function withOwn<T extends object>(own: Partial<T> | null, key: keyof T, value: string): Partial<T> {
  const { [key]: _before, ...rest } = (own ?? {}) as T;
  return (value === '' ? rest : { ...rest, [key]: value === '?' ? '' : value }) as Partial<T>;
}

function MilkRow({
  text,
  onChange,
  problems,
  reader,
  field,
  words,
}: Props & {
  readonly field: (typeof MILK_FIELDS)[number];
  readonly words: readonly string[] | undefined;
}) {
  const all = text.all.milk[field];
  const { label, kind } = JAR_FIELDS[field];
  return (
    <SheetRow
      label={label}
      all={{
        value: all,
        words,
        read: readField(kind, all, reader),
        problem: problems.get(`all.milk.${field}`),
        onChange: (value) =>
          onChange({ ...text, all: { ...text.all, milk: { ...text.all.milk, [field]: value } } }),
      }}
      jars={text.jars.map((jar, at) => {
        const own = jar.milk?.[field];
        return {
          letter: jar.letter,
          value: own ?? '',
          words,
          read: readField(kind, own ?? '', reader),
          placeholder: own === undefined ? all : 'not noted',
          problem: problems.get(`jars.${at}.milk.${field}`),
          onChange: (value) => {
            const milk = withOwn(jar.milk, field, value);
            const next: JarText = { ...jar, milk: Object.keys(milk).length === 0 ? null : milk };
            onChange({ ...text, jars: text.jars.with(at, next) });
          },
        };
      })}
    />
  );
}

function AdditionRow({
  text,
  onChange,
  problems,
  label,
  row,
  field,
  words,
  read,
  start,
  usual,
}: Props & {
  readonly label: string;
  readonly row: number;
  readonly field: keyof AdditionText;
  readonly words?: readonly string[];
  readonly read?: (value: string) => ReturnType<Reader['amount']>;
  /** What was filled in so far, so that an amount that was typed stays. */
  readonly start: BatchText;
  readonly usual: Usual;
}) {
  const shared = text.all.additions[row] ?? noAddition;
  const setAll = (value: string): void => {
    if (field === 'name') return onChange(withName(text, start, row, null, value, usual));
    if (field === 'planned') return onChange(withAmountForAll(text, start, row, value, usual));
    const rows = Array.from({ length: additionRows(text) }, (_, at) => text.all.additions[at] ?? noAddition);
    return onChange({
      ...text,
      all: { ...text.all, additions: rows.with(row, { ...shared, [field]: value }) },
    });
  };
  return (
    <SheetRow
      label={label}
      all={{
        value: shared[field],
        words,
        read: read?.(shared[field]),
        problem: problems.get(`all.additions.${row}.${field}`),
        placeholder: field === 'name' && text.jars.length === 1 ? 'plain' : undefined,
        onChange: setAll,
      }}
      jars={text.jars.map((jar, at) => {
        const own = jar.additions?.[row]?.[field];
        const comes = recipeOf(text, jar).additions[row] ?? noAddition;
        const plain = comes.name.trim() === '' || saysPlain(comes);
        return {
          letter: jar.letter,
          value: own ?? '',
          words,
          read: read?.(own ?? ''),
          placeholder: field === 'name' && plain ? 'plain' : plain && field !== 'name' ? '' : comes[field],
          problem: problems.get(`jars.${at}.additions.${row}.${field}`),
          onChange: (value) => {
            if (field === 'name') {
              onChange(withName(text, start, row, at, value, usual));
              return;
            }
            const rows = Array.from(
              { length: Math.max(row + 1, jar.additions?.length ?? 0) },
              (_, one) => jar.additions?.[one] ?? {},
            );
            const next = rows.with(row, withOwn<AdditionText>(rows[row] ?? {}, field, value));
            const none = next.every((one) => Object.keys(one).length === 0);
            onChange({ ...text, jars: text.jars.with(at, { ...jar, additions: none ? null : next }) });
          },
        };
      })}
    />
  );
}

/** The head of a column: the jar as it will be, its letter, one press that makes it plain, one that takes it away. */
function JarHead({ text, at, onChange, problems }: Props & { readonly at: number }) {
  const jar = text.jars[at]!;
  const plain = recipeOf(text, jar).additions.every((one) => one.name.trim() === '' || saysPlain(one));
  const set = (part: Partial<JarText>): void =>
    onChange({ ...text, jars: text.jars.with(at, { ...jar, ...part }) });
  const rows = additionRows(text);
  return (
    <fieldset className="sheet-head" aria-label={`Head of jar ${jar.letter}`}>
      <PlannedJar plain={plain} />
      <Cell
        label="Letter"
        rare
        column={at + 1}
        value={jar.letter}
        problem={problems.get(`jars.${at}.letter`)}
        onChange={(letter) => set({ letter })}
      />
      <button
        type="button"
        className="button plain-jar"
        aria-label={`Plain: nothing stirred in, jar ${jar.letter}`}
        aria-pressed={plain}
        data-enter="pass"
        onClick={() =>
          text.jars.length > 1
            ? set({ additions: Array.from({ length: rows }, () => ({ name: 'plain' })) })
            : onChange({
                ...text,
                all: { ...text.all, additions: [noAddition] },
                jars: [{ ...jar, additions: null }],
              })
        }
      >
        Plain
      </button>
      {text.jars.length > 1 && (
        <button
          type="button"
          className="button quiet"
          data-enter="pass"
          aria-label={`Remove jar ${jar.letter}`}
          onClick={() => onChange(withJars(text, text.jars.toSpliced(at, 1)))}
        >
          ×
        </button>
      )}
    </fieldset>
  );
}

/** The jar that was just said to be seeded otherwise: the keyboard goes there. A batch that is made again begins at its top. */
interface AskedSeed {
  readonly asked: number | null;
  readonly ask: (jar: number) => void;
}

/** What an amount is filled in from. */
interface Filled {
  readonly start: BatchText;
  readonly usual: Usual;
}

interface Select {
  readonly label: string;
  readonly choices: readonly Choice<string>[];
  readonly all: { readonly value: string; readonly onChange: (value: string) => void } | null;
  readonly jar: (
    jar: JarText,
    at: number,
  ) => { readonly value: string; readonly onChange: (value: string) => void };
}

/** A question with a few answers: for all, and for each jar where there are several. */
function SelectRow({ text, label, choices, all, jar }: Pick<Props, 'text'> & Select) {
  const id = useId();
  const field = (one: ReturnType<Select['jar']>, name: string | undefined, own: boolean) => (
    <select
      className="input"
      id={name ? undefined : id}
      aria-label={name}
      value={one.value}
      onChange={(event) => one.onChange(event.target.value)}
    >
      {own && <option value="">As all</option>}
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))}
    </select>
  );
  return (
    <div className="sheet-row">
      {all === null ? <span>{label}</span> : <label htmlFor={id}>{label}</label>}
      <div className="cell for-all">{all && field(all, undefined, false)}</div>
      {text.jars.length > 1 &&
        text.jars.map((one, at) => (
          <div key={at} className="cell">
            {field(jar(one, at), `${label}, jar ${one.letter}`, all !== null)}
          </div>
        ))}
    </div>
  );
}

/** "45 ml of 3 May a and 2 pieces of Blue Tin": what seeds a jar of its own. */
const seedsInShort = (seeds: readonly SeedText[]): string =>
  seeds
    .flatMap(({ picked, find, amount }) => {
      const from = picked?.label ?? find.trim();
      const words = [amount.trim(), from].filter((one) => one !== '').join(' of ');
      return words === '' ? [] : [words];
    })
    .join(' and ') || 'not picked yet';

/** What each jar was seeded from: as all, in words, or with seeds of its own, which open below the row. */
function SeedsRow({ asked, ask, ...props }: Props & AskedSeed) {
  const { text, onChange, problems, reader, packages, notAfter } = props;
  const set = (at: number, seeds: JarText['seeds']): void =>
    onChange({ ...text, jars: text.jars.with(at, { ...text.jars[at]!, seeds }) });
  return (
    <>
      <div className="sheet-row">
        <span>Seed of a jar</span>
        <span className="cell for-all soft small">the seed above, unless it says otherwise</span>
        {text.jars.map((jar, at) => (
          <div key={at} className="cell">
            <span className="small">{jar.seeds ? seedsInShort(jar.seeds) : 'as above'}</span>
            <button
              type="button"
              className="button"
              data-enter="pass"
              aria-label={`${jar.seeds ? 'Seed it as above' : 'Seed it otherwise'}: jar ${jar.letter}`}
              onClick={() => {
                ask(at);
                set(at, jar.seeds ? null : text.all.seeds);
              }}
            >
              {jar.seeds ? 'Seed it as above' : 'Seed it otherwise'}
            </button>
          </div>
        ))}
      </div>
      {text.jars.map(
        (jar, at) =>
          jar.seeds && (
            <fieldset key={at} className="sheet-own-seed" aria-label={`Jar ${jar.letter}`}>
              <legend>Seed of jar {jar.letter}</legend>
              <SeedRows
                of={`jar ${jar.letter}`}
                seeds={jar.seeds}
                path={`jars.${at}.seeds`}
                problems={problems}
                reader={reader}
                packages={packages}
                notAfter={notAfter}
                startHere={asked === at}
                onChange={(seeds) => set(at, seeds)}
              />
            </fieldset>
          ),
      )}
    </>
  );
}

/** Whether something is said in a field that folds away. */
const saysRare = ({ all, jars, holds, note }: BatchText): boolean =>
  note !== '' ||
  holds.length > 1 ||
  all.additions.some(({ actual }) => actual !== '') ||
  jars.some(
    ({ additions, hold, state, note, seeds }) =>
      hold !== null ||
      state !== null ||
      note !== '' ||
      seeds !== null ||
      additions?.some((one) => one.actual),
  );

/** Where each jar stood, whether it was made, and a note on it. */
function PlaceRows({ text, onChange }: Props) {
  const setAll = (part: Partial<BatchText['all']>): void =>
    onChange({ ...text, all: { ...text.all, ...part } });
  const setJar = (at: number, part: Partial<JarText>): void =>
    onChange({ ...text, jars: text.jars.with(at, { ...text.jars[at]!, ...part }) });
  return (
    <>
      {text.holds.length > 1 && (
        <SelectRow
          text={text}
          label="Hold"
          choices={text.holds.map((_, hold) => ({ value: String(hold), label: `Hold ${hold + 1}` }))}
          all={{ value: String(text.all.hold), onChange: (hold) => setAll({ hold: Number(hold) }) }}
          jar={(jar, at) => ({
            value: jar.hold === null ? '' : String(jar.hold),
            onChange: (hold) => setJar(at, { hold: hold === '' ? null : Number(hold) }),
          })}
        />
      )}
      <SelectRow
        text={text}
        label="Made or planned"
        choices={[
          { value: 'made', label: 'Made' },
          { value: 'planned', label: 'Planned' },
        ]}
        all={{
          value: text.all.state,
          onChange: (state) => setAll({ state: state as BatchText['all']['state'] }),
        }}
        jar={(jar, at) => ({
          value: jar.state ?? '',
          onChange: (state) => setJar(at, { state: state === '' ? null : (state as JarText['state']) }),
        })}
      />
      <div className="sheet-row">
        <span>Note on {text.jars.length > 1 ? 'a' : 'the'} jar</span>
        {text.jars.length > 1 && <span className="cell for-all" />}
        {text.jars.map((jar, at) => (
          <Cell
            key={at}
            column={at + 1}
            label={`Note on jar ${jar.letter}`}
            value={jar.note}
            onChange={(note) => setJar(at, { note })}
          />
        ))}
      </div>
    </>
  );
}

/** What is rarely asked, a press away. */
function RareRows({ seeds, ...props }: Props & Filled & { readonly seeds: ReactNode }) {
  const { text, onChange, reader, packages } = props;
  const setAll = (part: Partial<BatchText['all']>): void =>
    onChange({ ...text, all: { ...text.all, ...part } });
  const setMilk = (part: Partial<MilkText>): void => setAll({ milk: { ...text.all.milk, ...part } });
  const setJar = (at: number, part: Partial<JarText>): void =>
    onChange({ ...text, jars: text.jars.with(at, { ...text.jars[at]!, ...part }) });
  const ofMilk = (
    field: 'finalVolumeKnown' | 'milkPackage',
    label: string,
    choices: readonly Choice<string>[],
  ) => (
    <SelectRow
      text={text}
      label={label}
      choices={choices}
      all={{ value: text.all.milk[field], onChange: (value) => setMilk({ [field]: value }) }}
      jar={(jar, at) => ({
        value: jar.milk?.[field] ?? '',
        onChange: (value) => setJar(at, { milk: withOwn<MilkText>(jar.milk, field, value) }),
      })}
    />
  );
  const stirred = [
    ...new Set(text.jars.flatMap((jar) => recipeOf(text, jar).additions.map(({ name }) => name))),
  ];
  const bags = stirred.flatMap((name) => packages.ofAddition(name)).filter(({ value }) => value !== '');
  return (
    <>
      {seeds}
      <AdditionRow {...props} label="Went in" row={0} field="actual" read={(value) => reader.amount(value)} />
      {bags.length > 0 && (
        <SelectRow
          text={text}
          label="From which package"
          choices={[{ value: '', label: 'Not noted' }, ...bags]}
          all={{
            value: text.all.additions[0]?.package ?? '',
            onChange: (value) =>
              setAll({
                additions: [
                  { ...noAddition, ...text.all.additions[0], package: value },
                  ...text.all.additions.slice(1),
                ],
              }),
          }}
          jar={(jar, at) => ({
            value: jar.additions?.[0]?.package ?? '',
            onChange: (value) =>
              setJar(at, {
                additions: [
                  withOwn<AdditionText>(jar.additions?.[0] ?? {}, 'package', value),
                  ...(jar.additions?.slice(1) ?? []),
                ],
              }),
          })}
        />
      )}
      {packages.milk.length > 0 && ofMilk('milkPackage', 'From which carton', packages.milk)}
      {ofMilk('finalVolumeKnown', JAR_FIELDS.finalVolumeKnown.label, [
        { value: '', label: 'Not noted' },
        ...wordChoices(VOLUMES_KNOWN),
      ])}
      <PlaceRows {...props} />
    </>
  );
}

interface SheetProps extends Props, Filled {
  /** What the ledger has had stirred in: filled in while its beginning is typed. */
  readonly fibres: readonly string[];
  /** The row of warmth, and what else folds away. */
  readonly warmth: ReactNode;
  readonly fold: ReactNode;
}

/** The sheet. */
export function BatchSheet({ fibres, warmth, fold, ...props }: SheetProps) {
  const { text, onChange, reader } = props;
  const [rare, setRare] = useState(() => saysRare(text));
  const many = text.jars.length > 1;
  const [asked, ask] = useState<number | null>(null);
  // A seed that one jar has for itself is no rare thing: it stands first, in words, and does not wait behind a press.
  const [seedsFirst] = useState(() => text.jars.some(({ seeds }) => seeds !== null));
  const seeds = many && <SeedsRow {...props} asked={asked} ask={ask} />;
  const amount = (value: string) => reader.amount(value);
  const words = [...new Set(['plain', ...fibres, ...FIBRES])];
  const more = additionRows(text);
  const last = text.jars.some((jar) => (recipeOf(text, jar).additions[more - 1]?.name ?? '') !== '');
  return (
    <section className="sheet" aria-label="The jars" data-jars={text.jars.length}>
      <div className="sheet-row sheet-heads">
        <span />
        {many && <span className="cell for-all soft">All jars</span>}
        {text.jars.map((_, at) => (
          <JarHead key={at} {...props} at={at} />
        ))}
      </div>
      {seedsFirst && seeds}
      {Array.from({ length: more }, (_, row) => [
        <AdditionRow
          key={`name ${row}`}
          {...props}
          label={row === 0 ? 'Stirred in' : 'And'}
          row={row}
          field="name"
          words={words}
        />,
        <AdditionRow
          key={`amount ${row}`}
          {...props}
          label={row === 0 ? 'Amount' : 'Its amount'}
          row={row}
          field="planned"
          read={amount}
        />,
      ])}
      {MILK_FIELDS.map((field) => (
        <MilkRow key={field} {...props} field={field} words={COMMON_WORDS[field]} />
      ))}
      {warmth}
      <div className="row sheet-more">
        <button
          type="button"
          className="button quiet"
          aria-expanded={rare}
          data-enter="pass"
          onClick={() => setRare(!rare)}
        >
          {rare ? 'Less' : 'More: another seed, packages, planned, another hold, notes'}
        </button>
        {last && (
          <button
            type="button"
            className="button quiet"
            data-enter="pass"
            onClick={() => {
              const all = Array.from({ length: more + 1 }, (_, row) => text.all.additions[row] ?? noAddition);
              onChange({ ...text, all: { ...text.all, additions: all } });
            }}
          >
            One more thing stirred in
          </button>
        )}
        {many && <span className="soft small">An empty cell is as all jars are; “?” is not noted.</span>}
      </div>
      {rare && <RareRows {...props} seeds={!seedsFirst && seeds} />}
      {rare && fold}
    </section>
  );
}

// The ledger of events: facts are rows. Every record of core/ledger/facts as a STRICT table, the acts, and the journal of
// what they changed. The first version that files are kept in: versions before it were never released.
//
// Where this holds more than life needs, it is what the older calls reply: `hold.batch`, `hold.basis`,
// `observation.set_after_hours`, `observation.power_cut`, `portion.place`, `choice.label`, `preferences`.
import {
  above,
  ALWAYS,
  amount,
  day,
  exactlyOne,
  flag,
  json,
  key,
  line,
  moment,
  name,
  oneOf,
  price,
  temperature,
  text,
  whole,
} from './column-forms';
import { frame } from './frame';
import { recordTable } from './record-table';
import { rules } from './trigger-rules';

const PARTS = ['whey', 'curd', 'mixed'];
const STAGES = ['early', 'take-out', 'chilled', 'opened', 'later', 'not said'];
const SIGNS = [
  'pink', 'red', 'orange', 'black', 'fuzz', 'foul smell', 'foam', 'lifted lid', 'torn curd', 'bath water got in',
  'not set and no pH at or below 4.6', 'said spoiled', 'tint', 'jelly', 'tint or jelly',
]; // prettier-ignore
const SIGN_ANSWERS = ['seen', 'not so', 'the fibre'];
const keptBack = (column: string): string =>
  `${column} INTEGER NOT NULL DEFAULT 1 CHECK (${column} IN (0, 1))`;

const bought: Record<string, readonly string[]> = {
  source: [
    name('name'),
    oneOf('form', ['capsules', 'tablets', 'sachets', 'powder', 'culture']),
    line('received_from'),
    whole('known_generations', 1),
    oneOf('guaranteed', ['manufacture', 'expiry']),
    'blend_count REAL CHECK (blend_count > 0)',
    text('note', 10_000),
    keptBack('note_private'),
  ],
  // One row for each strain that the label declares, in its order.
  strain: [
    key('source', 'source', ALWAYS),
    whole('place', 1, ALWAYS),
    // Empty text where the label leaves it out, as it has come in so far.
    'genus TEXT NOT NULL CHECK (length(genus) <= 200)',
    'species TEXT NOT NULL CHECK (length(species) <= 200)',
    'designation TEXT NOT NULL CHECK (length(designation) <= 200)',
    'count REAL CHECK (count > 0)',
  ],
  package: [
    oneOf('of', ['source', 'milk', 'addition'], ALWAYS),
    key('source', 'source', " CHECK (source IS NULL OR of = 'source')"),
    name('name'),
    ...amount('size'),
    ...price('price'),
    day('bought_on'),
    day('opened_on'),
    day('best_before'),
  ],
  appliance: [name('name'), oneOf('kind', ['bath', 'box', 'cooker', 'other'])],
  // What a meter, thermometer or fridge showed when it was checked: pH, else °C.
  tool_check: [
    oneOf('tool', ['meter', 'thermometer', 'fridge'], ALWAYS),
    line('name'),
    day('day', ALWAYS),
    'shown REAL NOT NULL CHECK (shown BETWEEN -90 AND 150)',
  ],
  // An allergen of what goes by this name.
  carries: [name('name'), name('allergen')],
  setting: [name('name'), 'value REAL NOT NULL', 'UNIQUE (name)'],
};

const made: Record<string, readonly string[]> = {
  // A day, a range where it is known no better, or neither: then nobody can name the day.
  batch: [
    day('made_on'),
    day('made_from', ' CHECK (made_from IS NULL OR made_on IS NULL)'),
    day('made_to', ' CHECK ((made_from IS NULL) = (made_to IS NULL)) CHECK (made_from <= made_to)'),
    line('word'),
    line('line_name'),
  ],
  jar: [
    key('batch', 'batch', ALWAYS),
    text('letter', 20, ALWAYS),
    oneOf('state', ['planned', 'made', 'not made', 'mistake', 'lost'], ALWAYS),
    line('vessel'),
    ...amount('final_volume'),
    oneOf('final_volume_known', ['measured', 'filled to the vessel', 'milk plus seed']),
  ],
  // `actual` null in a made jar is unknown, never "as planned". A milk without a name is some milk of a carton.
  milk: [key('jar', 'jar', ALWAYS), line('name'), ...amount('planned'), ...amount('actual')],
  addition: [key('jar', 'jar', ALWAYS), name('name'), ...amount('planned'), ...amount('actual')],
  // A part of a jar kept apart. It is itself the movement that split it off, from its jar or from another portion.
  portion: [
    key('jar', 'jar', ALWAYS),
    key('of_portion', 'portion', ' CHECK (of_portion <> key)'),
    oneOf('part', PARTS),
    oneOf('form', ['pot', 'cubes', 'flakes', 'jar'], ALWAYS),
    oneOf('place', ['fridge', 'freezer', 'dried'], ALWAYS),
    flag('reserve', ALWAYS),
    'pieces INTEGER CHECK (pieces > 0)',
    ...amount('amount'),
    day('kept_on', ALWAYS),
  ],
  // One edge. It is itself the movement "used as seed". Seedings of a jar with the same `either`: one of these, not sure which.
  seeding: [
    key('jar', 'jar', ALWAYS),
    key('from_jar', 'jar', ' CHECK (from_jar <> jar)'),
    key('source', 'source'),
    key('portion', 'portion', ' CHECK (portion IS NULL OR from_jar IS NOT NULL)'),
    oneOf('part', PARTS),
    ...amount('planned'),
    ...amount('actual'),
    whole('either', 1),
    exactlyOne(['from_jar', 'source']),
  ],
  use: [
    key('package', 'package', ALWAYS),
    ...amount('amount'),
    key('milk', 'milk'),
    key('addition', 'addition'),
    key('seeding', 'seeding'),
    key('batch', 'batch'),
    exactlyOne(['milk', 'addition', 'seeding', 'batch']),
  ],
};

const warm: Record<string, readonly string[]> = {
  // Of no batch: one bath warms two. `batch` is only the one it was entered with, where no jar stays in it.
  hold: [
    key('appliance', 'appliance'),
    key('batch', 'batch'),
    oneOf('purpose', ['jars', 'proof'], ALWAYS),
    ...moment('planned_from'),
    ...moment('planned_to'),
    ...temperature('planned'),
    ...moment('began'),
    ...moment('ended'),
    'hours REAL CHECK (hours > 0)',
    // 'notes': told apart only by figures in a keeper's notes.
    oneOf('basis', ['recorded', 'notes'], ALWAYS),
    flag('filled'),
    'CONSTRAINT in_order CHECK (began <= ended AND planned_from <= planned_to)',
  ],
  stay: [
    key('jar', 'jar', ALWAYS),
    key('hold', 'hold', ALWAYS),
    ...moment('came'),
    ...moment('went'),
    ...moment('planned_came'),
    ...moment('planned_went'),
    'CONSTRAINT came_before_it_went CHECK (came <= went)',
    'CONSTRAINT planned_in_order CHECK (planned_came <= planned_went)',
  ],
  interruption: [
    key('hold', 'hold', ALWAYS),
    oneOf('what', ['power', 'heater', 'lid', 'other'], ALWAYS),
    ...moment('began'),
    ...moment('ended'),
    above('hours', 0),
    flag('was_set'),
    'CONSTRAINT in_order CHECK (began <= ended)',
  ],
  // One probe in one place. A probe moved is a new series. `clock` is how its times were read, `scale` its unit.
  series: [
    key('hold', 'hold', ALWAYS),
    oneOf('place', ['air', 'bath', 'jar']),
    key('jar', 'jar', " CHECK (jar IS NULL OR place = 'jar')"),
    key('block', 'reading_block'),
    line('heading'),
    line('clock'),
    oneOf('scale', ['°C', '°F']),
    oneOf('spot', ['centre', 'edge']),
  ],
};

const seen: Record<string, readonly string[]> = {
  observation: [
    key('jar', 'jar', ALWAYS),
    key('portion', 'portion'),
    oneOf('stage', STAGES, ALWAYS),
    ...moment('at'),
    day('day', ' CHECK (day IS NULL OR at IS NULL)'),
    above('hours_in', 0),
    whole('days_open', 0, " CHECK (days_open IS NULL OR stage IN ('opened', 'later'))"),
    flag('looked'),
    oneOf('set_state', ['loose', 'starting', 'set', 'not set']),
    oneOf('set_word', ['runny', 'soft', 'spoonable', 'firm', 'very firm']),
    oneOf('whey', ['none', 'a little', 'some', 'a lot']),
    oneOf('tang', ['none', 'mild', 'clear', 'sharp']),
    flag('sour'),
    oneOf('bubbles', ['none', 'fine']),
    // Between which hours it set, and whether the power failed, as one jar's keeper answered it.
    above('set_after_hours', 0),
    above('set_by_hours', 0, ' CHECK (set_after_hours <= set_by_hours)'),
    flag('power_cut'),
    above('power_cut_hours', 0, ' CHECK (power_cut_hours IS NULL OR power_cut IS 1)'),
  ],
  acidity: [
    key('observation', 'observation', ALWAYS),
    'ph REAL NOT NULL CHECK (ph BETWEEN 0 AND 14)',
    oneOf('how', ['meter', 'strip', 'not said'], ALWAYS),
    flag('checked'),
  ],
  photograph: [
    key('jar', 'jar', ALWAYS),
    key('observation', 'observation'),
    "sha TEXT NOT NULL CHECK (length(sha) = 64 AND sha NOT GLOB '*[^0-9a-f]*')",
    whole('width', 1, ALWAYS),
    whole('height', 1, ALWAYS),
  ],
  // Any free text, with how the keeper has read it.
  remark: [
    ...['jar', 'batch', 'hold', 'portion', 'observation', 'photograph', 'package', 'seeding'].map((table) =>
      key(table, table),
    ),
    oneOf('field', ['note', 'texture', 'smell', 'colour'], ALWAYS),
    text('text', 10_000, ALWAYS),
    keptBack('private'),
    oneOf('read_as', ['fine', 'look', 'discard']),
    exactlyOne(['jar', 'batch', 'hold', 'portion', 'observation', 'photograph', 'package', 'seeding']),
  ],
  sign: [
    key('observation', 'observation'),
    key('remark', 'remark'),
    oneOf('kind', SIGNS, ALWAYS),
    oneOf('answer', SIGN_ANSWERS),
    "CONSTRAINT only_a_tint_or_jelly_is_the_fibre CHECK (answer IS NOT 'the fibre' OR kind IN ('tint', 'jelly', 'tint or jelly'))",
    exactlyOne(['observation', 'remark']),
  ],
};

const kept: Record<string, readonly string[]> = {
  // Neither day nor moment: nobody said when.
  movement: [
    key('jar', 'jar'),
    key('portion', 'portion'),
    oneOf(
      'kind',
      ['fridge', 'freezer', 'thawed', 'opened', 'eaten', 'given', 'discarded', 'gone', 'still there'],
      ALWAYS,
    ),
    day('day'),
    ...moment('at', ''),
    ...amount('amount'),
    'pieces INTEGER CHECK (pieces > 0)',
    // Id of the hand-over that went with it.
    'hand_over TEXT CHECK (length(hand_over) = 36)',
    'CONSTRAINT a_day_or_a_moment CHECK (day IS NULL OR at IS NULL)',
    exactlyOne(['jar', 'portion']),
  ],
};

const judged: Record<string, readonly string[]> = {
  reason: ['text TEXT NOT NULL CHECK (length(text) BETWEEN 3 AND 10000)', keptBack('private')],
  lift: [key('reason', 'reason', ALWAYS), key('jar', 'jar', ALWAYS), key('of_jar', 'jar', ALWAYS)],
  // What was known of the spoilage when the reason was written. `sign` may be gone since: it points at its record.
  lift_knew: [
    key('lift', 'lift', ALWAYS),
    key('sign', 'record'),
    oneOf('kind', [...SIGNS, 'not set'], ALWAYS),
    oneOf('answer', SIGN_ANSWERS),
    flag('opened', ALWAYS),
    whole('days_open', 0, ' CHECK (days_open IS NULL OR opened = 1)'),
  ],
  choice: [
    // The line that was asked about (its founding batch); null: all that is kept.
    key('line', 'batch'),
    // What was chosen; no jar: a fresh start.
    key('jar', 'jar'),
    key('portion', 'portion', ' CHECK (portion IS NULL OR jar IS NOT NULL)'),
    name('label'),
    whole('place', 1, ALWAYS),
    whole('model_version', 1, ALWAYS),
    json('advice', 'object', ALWAYS),
  ],
  lab_result: [
    key('jar', 'jar'),
    key('portion', 'portion'),
    day('sampled_on'),
    line('laboratory'),
    // 'count' is the density that was measured, in CFU/mL.
    name('what'),
    'value REAL NOT NULL',
    name('unit'),
    oneOf('bound', ['<', '=', '>'], ALWAYS),
    exactlyOne(['jar', 'portion']),
  ],
};

const compared: Record<string, readonly string[]> = {
  trial: [
    key('batch', 'batch', ALWAYS),
    name('differs_in'),
    oneOf('expected', ['more is better', 'less is better']),
  ],
  treatment: [
    key('trial', 'trial', ALWAYS),
    key('jar', 'jar', ALWAYS),
    name('name'),
    above('dose', 0),
    'UNIQUE (trial, jar)',
  ],
  taster: [name('name'), keptBack('private')],
  session: [
    key('trial', 'trial'),
    day('day', ALWAYS),
    oneOf('kind', ['rank', 'score', 'pair', 'triangle'], ALWAYS),
    // From what the serving order was drawn; null where nothing was.
    line('draw'),
    // Who poured; one who also tastes knows which jar is which.
    key('poured_by', 'taster'),
    ...moment('revealed_at'),
  ],
  taster_avoids: [key('taster', 'taster', ALWAYS), name('allergen')],
  // Each taster has codes of their own; a triangle serves one jar under two.
  serving: [
    key('session', 'session', ALWAYS),
    key('taster', 'taster', ALWAYS),
    whole('place', 1, ALWAYS),
    key('jar', 'jar', ALWAYS),
    key('portion', 'portion'),
    'code INTEGER NOT NULL CHECK (code BETWEEN 100 AND 999)',
    'UNIQUE (session, taster, place)',
    'UNIQUE (session, code)',
  ],
  mark: [
    key('serving', 'serving', ALWAYS),
    name('aspect'),
    whole('rank', 1),
    'score REAL',
    line('word'),
    flag('picked'),
    exactlyOne(['rank', 'score', 'word', 'picked']),
    'UNIQUE (serving, aspect)',
  ],
};

const doors: Record<string, readonly string[]> = {
  // What makes it the same file, in the form that the reader of notes chooses, and its headings in order.
  note_file: [text('name', 500, ALWAYS), json('headings', 'array', ALWAYS)],
  note_row: [
    key('file', 'note_file', ALWAYS),
    whole('line', 1, ALWAYS),
    whole('occurrence', 1, ALWAYS),
    // Cell by heading: a new column changes no row. Null where the row came in without its cells.
    json('cells', 'object'),
    text('cells_sha', 200, ALWAYS),
    text('read_sha', 200),
    key('jar', 'jar'),
    'UNIQUE (cells_sha, file, occurrence)',
  ],
  note_answer: [
    key('note_row', 'note_row', ALWAYS),
    text('question', 500, ALWAYS),
    text('answer', 10_000, ALWAYS),
  ],
  reminder_done: [text('kind', 100, ALWAYS), key('about', 'record'), ...moment('at', ALWAYS)],
  // A form that came in and says otherwise than the row: it waits here, never in the row.
  received: [
    key('about', 'record', ALWAYS),
    key('from_ledger', 'ledger', ALWAYS),
    whole('form_no', 1, ALWAYS),
    json('form', 'object', ALWAYS),
    oneOf('decided', ['kept own', 'took received']),
  ],
  preferences: [
    oneOf('theme', ['system', 'light', 'dark'], ALWAYS),
    oneOf('temperatures', ['°C', '°F'], ALWAYS),
    oneOf('volumes', ['metric', 'spoons'], ALWAYS),
    oneOf('spoons', ['US', 'metric', 'Australia', 'UK imperial'], ALWAYS),
    oneOf('dates', ['day first', 'month first'], ALWAYS),
    "currency TEXT NOT NULL CHECK (currency GLOB '[A-Z][A-Z][A-Z]')",
    whole('seed_fridge_days', 1),
    whole('seed_freezer_days', 1),
    whole('most_generations', 1),
    'jar_follows_hours REAL CHECK (jar_follows_hours > 0)',
  ],
};

/** Every table of records, each after all it points at. */
const tables = { ...bought, ...made, ...warm, ...seen, ...kept, ...judged, ...compared, ...doors };

/** Indexes on every path that is asked: what hangs on a record, a day, a picture. */
const indexes = (): string => {
  const pointing = Object.entries(tables).flatMap(([table, columns]) =>
    columns.flatMap((definition) => {
      const column = /^(\w+) INTEGER REFERENCES/.exec(definition)?.[1];
      if (column === undefined) return [];
      const partial = definition.endsWith(ALWAYS) ? '' : ` WHERE ${column} IS NOT NULL`;
      return [`CREATE INDEX ${table}_${column} ON ${table} (${column})${partial};`];
    }),
  );
  return [
    ...pointing,
    'CREATE INDEX batch_day ON batch (made_on);',
    'CREATE INDEX batch_range ON batch (made_from) WHERE made_from IS NOT NULL;',
    'CREATE INDEX hold_began ON hold (began) WHERE began IS NOT NULL;',
    'CREATE INDEX photograph_sha ON photograph (sha);',
    "CREATE INDEX remark_discard ON remark (read_as) WHERE read_as = 'discard';",
    'CREATE UNIQUE INDEX preferences_one ON preferences ((1));',
  ].join('\n');
};

export default {
  version: 3,
  name: '0003-events',
  sql: [
    frame,
    ...Object.entries(tables).map(([table, columns]) => recordTable(table, columns)),
    indexes(),
    rules,
  ].join('\n'),
} as const;

// Each taster's bowls in the order of liking, and a thread from taster to taster for each jar: where threads cross, they disagree.
// Threads are told apart by width and dash, not by colour alone. Decoration beside the words that stand on each bowl.
import { Bowl } from './bowl';
import type { Session } from './trial-types';

const ROW = 156;
/** Of a bowl in its row: where a thread comes in, and where it goes out. */
const IN = 32;
const OUT = 126;

type Served = Session['tasters'][number];
type Serving = Served['servings'][number];

interface Props {
  readonly tasters: readonly Served[];
  readonly task: Session['task'];
  readonly grains: ReadonlyMap<string, number | null>;
  readonly jars: NonNullable<Session['jars']>;
}

/** Bowls of a taster as they liked them, the best first; of a triangle as they were served. */
function inOrder(taster: Served, task: Session['task']): { readonly serving: Serving; readonly tied: boolean }[] {
  const valueOf = ({ marks }: Serving): number => {
    const mark = marks.find(({ aspect }) => aspect === 'overall');
    return mark?.rank ?? (mark?.score === null || mark?.score === undefined ? (mark?.picked === true ? 0 : 1) : -mark.score);
  };
  if (task === 'triangle') return taster.servings.map((serving) => ({ serving, tied: false }));
  const sorted = taster.servings.toSorted((a, b) => valueOf(a) - valueOf(b));
  return sorted.map((serving, at) => {
    const before = sorted[at - 1];
    return { serving, tied: before !== undefined && valueOf(before) === valueOf(serving) };
  });
} // prettier-ignore

function headsOf(task: Session['task'], count: number): string[] {
  if (task === 'triangle') return ['first bowl', 'second', 'third'];
  if (task === 'pair') return ['preferred', 'the other'];
  return Array.from({ length: count }, (_, at) => (at === 0 ? 'liked most' : at === count - 1 ? 'liked least' : ''));
} // prettier-ignore

const letterOf = (label: string): string => label.split(' ').at(-1) ?? label;

export function Threads({ tasters, task, grains, jars }: Props) {
  const rows = tasters.map((taster) => ({ taster, bowls: inOrder(taster, task) }));
  const columns = Math.max(1, ...rows.map(({ bowls }) => bowls.length));
  const labelOf = new Map(jars.map(({ jar, label }) => [jar, label]));
  const x = (at: number): number => (at + 0.5) / columns;
  const threads = task === 'triangle' ? [] : jars.flatMap(({ jar }, which) =>
    rows.slice(1).flatMap(({ bowls }, row) => {
      const from = rows[row]?.bowls.findIndex(({ serving }) => serving.jar === jar) ?? -1;
      const to = bowls.findIndex(({ serving }) => serving.jar === jar);
      if (from < 0 || to < 0) return [];
      const [y1, y2] = [row * ROW + OUT, (row + 1) * ROW + IN];
      const half = (y1 + y2) / 2;
      return [<path key={`${jar} ${row}`} className={`thread thread-${which % 4}`} d={`M${x(from)} ${y1}C${x(from)} ${half} ${x(to)} ${half} ${x(to)} ${y2}`} />];
    }),
  );
  if (rows.length === 0) return <p className="soft">Nobody marked.</p>;
  return (
    <div className="threads">
      <div className="threads-heads soft small" style={{ gridTemplateColumns: `repeat(${columns}, 1fr)` }} aria-hidden="true">
        {headsOf(task, columns).map((head, at) => <span key={at}>{head}</span>)}
      </div>
      <div className="threads-rows">
        <svg className="threads-lines" viewBox={`0 0 1 ${rows.length * ROW}`} preserveAspectRatio="none" style={{ height: rows.length * ROW }} aria-hidden="true">
          {threads}
        </svg>
        {rows.map(({ taster, bowls }) => (
          <section key={taster.taster} className="threads-row" style={{ height: ROW }} aria-label={taster.name}>
            <h2>{taster.name}</h2>
            <ol style={{ gridTemplateColumns: `repeat(${columns}, 1fr)` }} aria-label={`As ${taster.name} liked them`}>
              {bowls.map(({ serving: { serving, code, jar, treatment, marks }, tied }) => (
                <li key={serving}>
                  {tied && <span className="threads-tied" title="as good as the one before">=</span>}
                  <Bowl text={letterOf(labelOf.get(jar ?? '') ?? '')} grain={grains.get(treatment ?? '') ?? null} />
                  <span className="small soft">
                    <span className="visually-hidden">{tied ? 'as good: ' : ''}{treatment}, </span>
                    {code}
                    {task === 'triangle' && marks.some(({ picked }) => picked === true) && ', chosen'}
                  </span>
                </li>
              ))}
            </ol>
          </section>
        ))}
      </div>
      {threads.length > 0 && <p className="soft small">Where threads cross, tasters disagree.</p>}
    </div>
  );
} // prettier-ignore

// The same numbers as a table.
import { useReader } from '../parts/use-reader';
import { rangesSay } from '../../core/says/batch-says';
import { leftOutWords } from './batch-words';
import type { LineReply } from './plot-scale';

const shown = (points: number | null): string =>
  points === null ? 'unknown' : String(Math.round(Math.min(100, Math.max(0, points))));

export function LineTable({ line }: { readonly line: LineReply }) {
  const { writer } = useReader();
  return (
    <div className="table-frame">
      <table>
        <caption className="visually-hidden">{line.name} over its batches, oldest first</caption>
        <thead>
          <tr>
            <th scope="col">Batch</th>
            <th scope="col">Generation</th>
            <th scope="col">Score</th>
            <th scope="col">As it came</th>
            <th scope="col">Jars</th>
            <th scope="col">Left out, and why</th>
            <th scope="col">Said of the line then</th>
          </tr>
        </thead>
        <tbody>
          {line.batches.map((batch) => (
            <tr key={batch.batch}>
              <th scope="row">{batch.madeOn === null ? batch.label : writer.day(batch.madeOn)}</th>
              <td className="figure">{batch.generation}</td>
              <td className={batch.score === null ? 'soft' : 'figure'}>{shown(batch.score)}</td>
              <td className={batch.uncorrected === null ? 'soft' : 'figure'}>{shown(batch.uncorrected)}</td>
              <td>
                {batch.jars
                  .filter(({ compared }) => compared)
                  .map((jar) => `${jar.label.split(' ').at(-1) ?? jar.label} ${jar.score}`)
                  .join(', ')}
                {batch.score !== null &&
                  rangesSay(
                    batch.score,
                    batch.jars.filter(({ compared }) => compared).map(({ score }) => ({ points: score })),
                  )}
              </td>
              <td>{leftOutWords(batch).join(' ')}</td>
              <td>{batch.standing}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

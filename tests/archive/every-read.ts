// Every call that reads, asked about everything that a ledger holds.
import { READS } from '../../core/call-names';
import type { CallName, Result } from '../../core/contract';
import { RECORDED } from '../../core/ledger/facts/recorded-facts';

type Ask = (name: CallName, input: unknown) => Result<unknown>;

const valueOf = <T>(result: Result<unknown>): T => {
  if (!result.ok) throw new Error(result.error.code);
  return result.value as T;
};

/** Replies by call and input. What a reply says of the file it lies in is left to the caller. */
export function everyRead(ask: Ask): Record<string, unknown> {
  const replies: Record<string, unknown> = {};
  const keep = (name: CallName, input: unknown): unknown =>
    (replies[`${name} ${JSON.stringify(input)}`] = ask(name, input));
  const family = valueOf<{ jars: { id: string }[]; lines: { id: string }[] }>(ask('family.get', {}));
  for (const name of READS) if (name !== 'app.state') keep(name, {});
  for (const spacing of ['generation', 'calendar']) keep('family.drawing', { spacing });
  for (const { id } of family.jars)
    for (const [name, key] of [['jar.get', 'id'], ['judgement.jar', 'jar'], ['jar.left', 'id'], ['photograph.list', 'jar'], ['line.list', 'jar']] as const) keep(name, { [key]: id }); // prettier-ignore
  for (const { id: line } of family.lines)
    for (const name of ['judgement.line', 'advice.line', 'advice.next', 'advice.restart', 'advice.choices'] as const) keep(name, { line }); // prettier-ignore
  const batches = valueOf<{ batches: { id: string }[] }>(ask('batch.list', { before: null, limit: 200 }));
  for (const { id } of batches.batches) keep('batch.get', { id });
  keep('history.list', { record: null, before: null, limit: 200 });
  keep('family.jars', { keys: [1, 2, 3, 4, 5, 6, 7, 8].slice(0, 0) });
  for (const kind of RECORDED) keep('facts.list', { kind, limit: 1000 });
  const series = valueOf<{ facts: { id: string }[] }>(ask('facts.list', { kind: 'series', limit: 1000 }));
  for (const { id } of series.facts) keep('readings.list', { series: id });
  return replies;
}

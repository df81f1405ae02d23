// Names that callers without a window rely on: calls, and fields of their replies, as they were named when they were first asked
// for. A name may be joined by others; it never goes.
import { expect, it } from 'vitest';
import { type CallName, contract } from '../../core/contract';

const NAMES = {
  'family.get': ['jars', 'lines', 'jars.id', 'jars.label', 'jars.madeOn', 'jars.letter', 'jars.generation.deepest', 'jars.generation.shallowest',
    'jars.generation.mean', 'jars.generation.atLeast', 'jars.doublings.transfers', 'jars.doublings.start', 'jars.shareBasis', 'jars.seeds.jar',
    'jars.seeds.source', 'jars.seeds.amount', 'jars.seeds.share', 'jars.tracedShares.source', 'jars.tracedShares.share', 'jars.holdHours',
    'jars.setWord', 'jars.ph', 'jars.spoiled', 'jars.discard', 'jars.cautions.of', 'jars.cautions.how', 'jars.cautions.level',
    'jars.cautions.cleared', 'lines.id', 'lines.name', 'lines.founded', 'lines.jarCount'],
  'jar.get': ['view.id', 'view.label', 'view.caution', 'view.spoiled', 'view.discard', 'batch', 'cautions.of', 'cautions.how', 'cautions.reason',
    'wayBack', 'ancestors', 'descendants', 'children', 'siblings', 'figures', 'record.outcome', 'record.safety.eat', 'record.safety.seed',
    'record.safety.stops', 'record.remarks.readAs', 'hold'],
  'jar.find': ['jars.id', 'jars.label', 'jars.says', 'jars.caution', 'jars.portions', 'named'],
  'batch.get': ['batch', 'holds', 'jars.jar', 'jars.label', 'jars.seedings', 'jars.outcome', 'jars.discard', 'jars.caution', 'jars.cautions'],
  'batch.record': ['act', 'batch', 'jars'],
  'advice.freshStart': ['suggestions.line', 'suggestions.jar', 'suggestions.weak', 'suggestions.sentence', 'suggestions.reasons'],
  'advice.line': ['verdict', 'reason', 'sentence', 'seed', 'asGood', 'look'],
  'advice.next': ['sentence', 'nothingMayBeUsed', 'ranking.jar', 'ranking.portion', 'ranking.label', 'ranking.kind', 'ranking.allowed', 'ranking.stops.code',
    'ranking.stops.says', 'ranking.stops.lifts', 'ranking.doubts', 'ranking.looks', 'ranking.cost', 'ranking.weakChance', 'ranking.reasons',
    'ranking.wouldChange', 'suggestions', 'warnings', 'unit', 'why', 'safety', 'model'],
  'advice.restart': ['sentence', 'best', 'from', 'to', 'curve', 'reserve', 'better', 'unit', 'assumed', 'why', 'model'],
  'caution.clear': ['act'],
  'notes.preview': ['columns', 'rows', 'problems', 'questions', 'assumptions'],
  'notes.bringIn': ['jars', 'seedings', 'sources', 'problems', 'questions', 'assumptions'],
  'history.list': ['acts.act', 'acts.kind', 'acts.says', 'acts.at', 'acts.why', 'acts.undone', 'more'],
  'act.undo': ['act', 'says'],
} as const satisfies Partial<Record<CallName, readonly string[]>>; // prettier-ignore

interface Shape {
  readonly def: { readonly type: string; readonly innerType?: Shape; readonly element?: Shape; readonly options?: readonly Shape[] };
  readonly shape?: Readonly<Record<string, Shape>>;
} // prettier-ignore

/** The object that a shape is, or is a list of, or may be. */
function objectIn(shape: Shape): Readonly<Record<string, Shape>> | null {
  const { def } = shape;
  if (shape.shape) return shape.shape;
  if (def.innerType) return objectIn(def.innerType);
  if (def.element) return objectIn(def.element);
  for (const option of def.options ?? []) {
    const found = objectIn(option);
    if (found) return found;
  }
  return null;
}

const has = (shape: Shape, path: readonly string[]): boolean => {
  const [name, ...rest] = path;
  if (name === undefined) return true;
  const next = objectIn(shape)?.[name];
  return next !== undefined && has(next, rest);
};

it.each(Object.entries(NAMES))('%s keeps its names', (call, names) => {
  const reply = contract[call as CallName].reply as unknown as Shape;
  expect(names.filter((name) => !has(reply, name.split('.')))).toEqual([]);
});

it('a name that is not there is missed', () => {
  expect(has(contract['family.get'].reply as unknown as Shape, ['jars', 'nothing'])).toBe(false);
});

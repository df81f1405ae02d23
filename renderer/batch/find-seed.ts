// What a seed can be picked from: jars by part of their label, products and cultures by name, and what to do where the
// ledger has neither. A condemned jar can't be picked; one that is set aside is asked about.
import { call } from '../state/ledger-calls';
import { say } from '../state/store';
import type { Reply, SafetyReply } from '../../core/contract';
import { discardHead, quoteSentence, stopsSaid } from '../../core/says/safety-says';
import { withKept } from './batch-repeat';
import type { Suggestion } from '../parts/combobox';

export interface SeedSuggestion extends Suggestion {
  readonly kind: 'jar' | 'source' | 'new source' | 'lost jar';
  /** What must be asked before it is used. */
  readonly ask?: string;
  /** What was kept apart of the jar, where that is meant and not the jar itself. */
  readonly portion?: {
    readonly id: string;
    readonly part: 'whey' | 'curd' | 'mixed' | null;
    readonly pieces: boolean;
  };
}

const HOW_MANY = 8;

/** Whether it may be picked, is asked about first, or can't be: by the one answer on safety, of the jar or of a part of it. */
function standingOf(label: string, safety: SafetyReply): Pick<SeedSuggestion, 'refused' | 'ask'> {
  const [stop] = safety.stops;
  if (stop === undefined) return {};
  if (stop === 'spoiled' || stop === 'not set' || stop === 'remark')
    return { refused: `${discardHead(stop)} It can’t be picked.` };
  if (stop === 'set aside')
    return {
      ask: `${label} is set aside because of a spoiled jar it is related to. Use it as seed all the same?`,
    };
  return { ask: `${label}: ${stopsSaid(safety).join(' ')} Use it as seed all the same?` };
}

/** What stands before its detail in the list. */
function standWords({ stops, looks }: SafetyReply): string | null {
  const [stop] = stops;
  if (stop === 'set aside') return 'set aside';
  if (stop === 'needs the meter' || stop === 'slow start' || stop === 'no acid')
    return 'not without a reason';
  return stop === undefined && looks.includes('caution') ? 'look at it first' : null;
}

/**
 * Suggestions for a text: jars first, then sources, then the two ways out.
 * @param notAfter the batch's day: a jar made later can't have seeded it
 */
export async function findSeeds(text: string, notAfter: string | null): Promise<readonly SeedSuggestion[]> {
  const typed = text.trim();
  const [found, listed] = await Promise.all([
    call('jar.find', { text: typed, limit: HOW_MANY, notAfter }),
    call('source.list', {}),
  ]);
  if (!found.ok) say(found.sentence, 'caution');
  if (!listed.ok) say(listed.sentence, 'caution');
  const jars = found.ok ? found.value.jars : [];
  const sources = listed.ok ? listed.value.sources : [];
  const lower = typed.toLowerCase();
  const near = sources.filter((source) => source.name.toLowerCase().includes(lower));
  const exact = near.some((source) => source.name.toLowerCase() === lower);
  // A text that names a jar makes no product and no lost jar: neither would carry the cautions of the jar.
  const named = found.ok ? found.value.named : null;
  const jarRows = [
    ...(named && !jars.some(({ id }) => id === named.id)
      ? [{ kind: 'jar', id: named.id, label: named.label, refused: named.says, meant: true } as const]
      : []),
    ...jars
      .flatMap(jarSuggestions)
      .map((row) => (row.refused && row.id === named?.id ? { ...row, meant: true } : row)),
  ];
  const sourceRows = near.slice(0, HOW_MANY).map((source): SeedSuggestion => ({
    kind: 'source',
    id: source.id,
    label: source.name,
    detail:
      source.form === 'culture'
        ? `received culture${source.receivedFrom ? ` from ${source.receivedFrom}` : ''}`
        : (source.form ?? 'product'),
  }));
  // A product whose name starts with what was typed is meant before a jar that merely contains it.
  const byName = lower !== '' && near.some((source) => source.name.toLowerCase().startsWith(lower));
  const first = byName ? [...sourceRows, ...jarRows] : [...jarRows, ...sourceRows];
  return [
    ...first,
    ...(typed !== '' && !exact && named === null
      ? [
          {
            kind: 'new source',
            id: 'new source',
            explicit: true,
            label: `Add “${typed}” as a new product`,
            detail: 'added when you record; strains and counts can follow',
          } as const,
        ]
      : []),
    ...(named === null
      ? [
          {
            kind: 'lost jar',
            id: 'lost jar',
            explicit: true,
            label: 'A jar nobody can name',
            detail: typed === '' ? 'stands for a lost jar' : `a lost jar, noted as “${typed}”`,
          } as const,
        ]
      : []),
  ];
}

/** The jar itself, then what was kept apart of it. */
function jarSuggestions(jar: Reply<'jar.find'>['jars'][number]): SeedSuggestion[] {
  const [quote] = jar.quotes;
  const detail = (says: string, safety: SafetyReply): string =>
    [standWords(safety), says, quote === undefined ? null : quoteSentence(quote)]
      .filter((part) => part !== null)
      .join(' · ');
  return [
    {
      kind: 'jar',
      id: jar.id,
      label: jar.label,
      detail: detail(jar.says, jar.safety),
      ...standingOf(jar.label, jar.safety),
    },
    ...jar.portions.map(({ id, name, says, part, pieces, safety }): SeedSuggestion => ({
      kind: 'jar',
      id: jar.id,
      label: withKept(jar.label, name),
      detail: detail(says === name ? 'kept apart' : says.slice(name.length + 2), safety),
      portion: { id, part, pieces },
      ...standingOf(withKept(jar.label, name), safety),
    })),
  ];
}

export interface Picked {
  readonly kind: 'jar' | 'source' | 'new source';
  readonly id: string;
  readonly label: string;
  readonly pieces?: boolean;
}

/** What to keep as picked. A product that is new is made with what is recorded; a lost jar is made here. */
export async function settle(suggestion: SeedSuggestion, typed: string): Promise<Picked | null> {
  const { kind, id, label, portion } = suggestion;
  if (kind === 'jar' || kind === 'source')
    return { kind, id, label, ...(portion?.pieces ? { pieces: true } : {}) };
  if (kind === 'new source') return { kind, id: '', label: typed.trim() };
  const name = typed.trim();
  const answer = await call('jar.lost', { madeOn: null, label: name === '' ? null : name, note: null });
  if (answer.ok) return { kind: 'jar', id: answer.value.jar, label: name === '' ? 'a lost jar' : name };
  say(answer.sentence, 'caution');
  return null;
}

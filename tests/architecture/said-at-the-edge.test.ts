// Codes cross, sentences are made at the edge: below core/says nothing writes one, and nowhere is one read back.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { expect, it } from 'vitest';
import { filesUnder, root } from './import-graph';

/** What lies in core outside core/says and holds sentences, and why it may. */
const MAY: readonly (readonly [start: string, why: string])[] = [
  ['core/says/', 'makes them'],
  ['core/sentences.ts', 'the table of refusals'],
  ['core/notes/', 'what a sheet is told, made in notes-says.ts and read by nothing'],
  ['core/readings/', 'what an export of readings is told, read by nothing'],
  ['core/rules/', 'the rule book says of each rule what it holds; what is broken is a code'],
  ['core/demo/', 'words that an invented keeper wrote'],
  ['core/archive/archive-read-me.ts', 'a file for people'],
  ['core/tables/tables-read-me.ts', 'a file for people'],
  ['core/reports/', 'pages for people'],
  ['core/ledger/jar-fields.ts', 'labels of the fields of a form'],
  ['core/growth/storage.ts', 'published sources'],
  ['core/growth/cardinal.ts', 'published sources'],
];

interface Node {
  readonly type: string;
  readonly value?: unknown;
  readonly quasis?: readonly { readonly value: { readonly cooked: string | null } }[];
  readonly regex?: { readonly pattern: string };
  readonly callee?: Node;
  readonly object?: Node;
  readonly property?: Node;
  readonly name?: string;
  readonly arguments?: readonly Node[];
}

function* nodesIn(value: unknown): Generator<Node> {
  if (value === null || typeof value !== 'object') return;
  if (Array.isArray(value)) {
    for (const one of value) yield* nodesIn(one);
    return;
  }
  const node = value as Node;
  // What is imported is a name, no words.
  if (node.type === 'ImportDeclaration' || node.type === 'ExportAllDeclaration') return;
  if (typeof node.type === 'string') yield node;
  for (const part of Object.values(node)) yield* nodesIn(part);
}

const nodesOf = (file: string, text = readFileSync(join(root, file), 'utf8')): Generator<Node> =>
  nodesIn(parseSync(file, text).program);

/** The text of a literal; what is filled in stands as X. */
function textOf({ type, value, quasis }: Node): string | null {
  if (type === 'Literal' && typeof value === 'string') return value;
  return type === 'TemplateLiteral' ? (quasis ?? []).map((one) => one.value.cooked ?? '').join('X') : null;
}

/** Three words or more that begin with a capital or a figure and end, somewhere, as a sentence does. */
const isSentence = (text: string): boolean =>
  /^ ?[A-ZX0-9“][^\n]*[a-z]/.test(text) &&
  /[a-z)’”%\d][.?!:;](?:\s|$)/.test(text) &&
  text.trim().split(/\s+/).length >= 3;

const sentencesIn = (file: string, text?: string): string[] =>
  [...nodesOf(file, text)].flatMap((node) => textOf(node) ?? []).filter(isSentence);

/** Names under which sentences cross, and what takes a text apart or looks into it. */
const SAID = /^(?:says|sentences?|reasons?|wouldChange|warnings?)$/;
const LOOKS_IN = ['includes', 'startsWith', 'endsWith', 'match', 'matchAll', 'search', 'split', 'replace', 'replaceAll', 'indexOf']; // prettier-ignore

const nameOf = (node: Node | undefined): string =>
  node?.type === 'MemberExpression' ? (node.property?.name ?? '') : (node?.name ?? '');

/** Where a sentence is read back: a method that looks into what is said, or an expression tried on it. */
function readBackIn(file: string, text?: string): string[] {
  return [...nodesOf(file, text)].flatMap((node) => {
    if (node.type !== 'CallExpression' || node.callee?.type !== 'MemberExpression') return [];
    const [of, method, first] = [nameOf(node.callee.object), nameOf(node.callee), node.arguments?.[0]];
    const words = first && textOf(first);
    if (LOOKS_IN.includes(method) && SAID.test(of) && typeof words === 'string')
      return [`${file}: ${of}.${method}`];
    if (LOOKS_IN.includes(method) && typeof words === 'string' && isSentence(words))
      return [`${file}: ${method} ${words}`];
    if ((method === 'test' || method === 'exec') && first && SAID.test(nameOf(first))) return [`${file}: ${method}(${nameOf(first)})`]; // prettier-ignore
    return [];
  });
}

it('no sentence is written in core but where it may be', () => {
  const found = filesUnder('core').flatMap((file) =>
    MAY.some(([start]) => file.startsWith(start)) ? [] : sentencesIn(file).map((text) => `${file}: ${text}`),
  );
  expect(found).toEqual([]);
  // Each exception is still one.
  for (const [start] of MAY)
    expect([start, filesUnder('core').some((file) => file.startsWith(start) && sentencesIn(file).length > 0)]).toEqual([start, true]); // prettier-ignore
});

it('no sentence is read back, in core, in the main process or on a screen', () => {
  expect(['core', 'main', 'renderer'].flatMap(filesUnder).flatMap((file) => readBackIn(file))).toEqual([]);
});

it('the check itself finds what it is there for', () => {
  expect(sentencesIn('x.ts', "const a = 'It is spoiled.'; const b = `Seen: ${a} by all.`; const c = 'set aside';")).toEqual([
    'It is spoiled.', 'Seen: X by all.',
  ]); // prettier-ignore
  const back =
    "if (reply.says.includes('spoiled')) go(); says.split('. '); /spoiled/.test(one.sentence); names.includes('a');";
  expect(readBackIn('x.ts', back)).toHaveLength(3);
});

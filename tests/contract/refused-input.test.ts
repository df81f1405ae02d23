// Every bad request gets a plain sentence: what is wrong, and where.
import { describe, expect, it } from 'vitest';
import { CALLS, type CallName } from '../../core/call-names';
import { contract } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { checkInput, isCallName, namesPath } from '../../main/check-call';
import { plainSource } from '../ledger/ledger-files';

function sentenceFor(name: CallName, input: unknown): string {
  const result = checkInput(name, input);
  return result.ok ? 'accepted' : refusalSentence(result.error);
}

describe('a request that does not fit', () => {
  it.each<[CallName, unknown, string]>([
    ['jar.get', {}, 'id: this is missing; it needs text. Please correct it and try again.'],
    ['jar.get', { id: 7 }, 'id: this has to be text. Please correct it and try again.'],
    ['jar.get', { id: '7' }, 'id: this is not the id of a record. Please correct it and try again.'],
    [
      'jar.get',
      { id: '019ced65-d5c0-7000-a1d5-d8f7c8caa890', more: 1 },
      'jar.get takes no field called “more”. Please correct it and try again.',
    ],
    [
      'family.drawing',
      { spacing: 'random' },
      'spacing: this has to be one of “generation”, “calendar”. Please correct it and try again.',
    ],
    [
      'jar.lost',
      { madeOn: '2026-02-30', label: null, note: null },
      'madeOn: this is not a day written as 2026-03-14. Please correct it and try again.',
    ],
    [
      'jar.find',
      { text: 'a', limit: 51, notAfter: null },
      'limit: this is too large; the most is 50. Please correct it and try again.',
    ],
    [
      'jar.find',
      { text: 'a'.repeat(201), limit: 5, notAfter: null },
      'text: this is too long; the most is 200. Please correct it and try again.',
    ],
  ])('%s %j', (name, input, sentence) => {
    expect(sentenceFor(name, input)).toBe(sentence);
  });

  it.each(CALLS)('%s refuses null, a text, a list and an unknown field with a sentence', (name) => {
    for (const input of [null, 'x'.repeat(100_000), [], { neverNamedSo: 1 }]) {
      const sentence = sentenceFor(name, input);
      expect(sentence).toMatch(/Please correct it and try again\.$/);
      expect(sentence).not.toMatch(/undefined|Invalid|expected/);
      expect(sentence.length).toBeLessThan(300);
    }
  });
});

describe('a name of which nothing can be seen', () => {
  // Zero-width space and joiner, soft hyphen, Hangul filler, blank Braille cell (Unicode character database, from memory).
  it.each(['\u200B', ' \u200D\u200B ', '\u00AD', '\u3164', '\u2800', '\u2003'])('%j is refused', (name) => {
    expect(sentenceFor('source.save', plainSource(name))).toBe(
      'source.name: nothing of this can be seen; it needs a name. Please correct it and try again.',
    );
  });
  it.each(['.', '0', 'é', '乳', '👩\u200D🍳', 'Blue\u200B Tin'])('%j is not', (name) => {
    expect(sentenceFor('source.save', plainSource(name))).toBe('accepted');
  });
});

it('knows its own names only', () => {
  expect(isCallName('app.state')).toBe(true);
  for (const name of ['toString', '__proto__', 'constructor', '']) expect(isCallName(name)).toBe(false);
});

describe('a request that names a file by its path', () => {
  it.each<[CallName, unknown, boolean]>([
    ['notes.preview', { file: { path: '/etc/passwd' } }, true],
    ['notes.bringIn', { file: { path: '' } }, true],
    ['readings.bringIn', { file: { path: 'probe.csv' } }, true],
    ['notes.bringIn', { file: { name: 'a.csv', bytes: new Uint8Array(1) } }, false],
    ['archive.write', { file: { path: 'a.zip' } }, true],
    ['archive.read', { file: { path: 'a.zip' } }, true],
    [
      'appliance.prove',
      { runs: [{ file: { name: 'a', bytes: new Uint8Array(1) } }, { file: { path: 'x' } }] },
      true,
    ],
    ['appliance.prove', { runs: [{ file: { name: 'a', bytes: new Uint8Array(1) } }] }, false],
    ['ledger.open', { file: 'elsewhere/other.sqlite' }, true],
    ['ledger.create', { file: '' }, true],
    ['ledger.create', { file: null }, false],
    ['ledger.open', {}, false],
    ['archive.write', { file: { name: 'all.zip' } }, false],
    ['tables.write', { folder: { path: 'tables' } }, true],
    ['tables.write', { folder: 'tables' }, true],
    ['tables.write', { folder: { name: 'tables' } }, false],
    ['label.print', { file: { path: 'a.pdf' } }, true],
    ['label.print', { file: { name: 'a.pdf' } }, false],
    ['label.print', { file: null }, false],
    ['ledger.fromArchive', { archive: 'a.zip', file: null }, true],
    ['ledger.fromArchive', { archive: null, file: null }, false],
    ['app.state', null, false],
    ['app.state', 'file', false],
  ])('%s %j', (name, input, names) => {
    expect(namesPath(name, input)).toBe(names);
  });

  it('has no other call with a file in it', () => {
    // A new call that takes a file has to be thought of here.
    const withFile = CALLS.filter((name) => /\b(?:file|folder)\b/.test(Object.keys(shapeOf(name)).join(' ')));
    expect(withFile.toSorted()).toEqual([
      'archive.read',
      'archive.write',
      'calendar.write',
      'handOver.preview',
      'handOver.read',
      'handOver.write',
      'label.print',
      'ledger.create',
      'ledger.fromArchive',
      'ledger.open',
      'notes.bringIn',
      'notes.preview',
      'readings.bringIn',
      'readings.preview',
      'report.print',
      'report.write',
      'tables.write',
    ]);
  });
});

const shapeOf = (name: CallName): Readonly<Record<string, unknown>> =>
  'shape' in contract[name].input ? (contract[name].input.shape as Readonly<Record<string, unknown>>) : {};

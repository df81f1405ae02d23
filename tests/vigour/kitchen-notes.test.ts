// The kitchen notes, brought in and judged: what a keeper would read out of them. Invented notes; no truth file says this.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { must, newFile, openSession } from '../ledger/helpers';

const session = openSession(newFile(), 'create', '2026-03-20T10:00:00+01:00');
const bytes = new Uint8Array(readFileSync(join(import.meta.dirname, '../notes/kitchen-notes.csv')));
must(session, 'notes.bringIn', { file: { name: 'kitchen-notes.csv', bytes } });
const { jars, lines } = must(session, 'family.get', {});
const judged = lines.map(({ id }) => must(session, 'judgement.line', { line: id }));

describe('the kitchen notes', () => {
  it('have a first line that slips: very firm and firm at first, spoonable at the end', () => {
    expect(['slipping', 'worn out']).toContain(judged[0]?.standing);
    expect(judged[0]!.slope!).toBeLessThan(-2);
  });
  it('do not take the soft jar held at 93 °F for a sign of the culture', () => {
    expect(judged[0]?.suspects.join(' ')).toContain('7 Dec 2025');
    const soft = jars.find(({ madeOn }) => madeOn === '2025-12-07');
    expect(must(session, 'judgement.jar', { jar: soft!.id }).leftOut).toContain('ran cool: 33.9 °C');
  });
  it('have a second line of which no slip is seen', () => {
    expect(['no slip seen', 'steady']).toContain(judged[1]?.standing);
  });
  it('leave nothing young enough to seed from in late March: a fresh start is offered', () => {
    const advice = must(session, 'advice.next', {});
    expect(advice.nothingMayBeUsed).toBe(true);
    expect(advice.ranking.filter(({ allowed }) => allowed).map(({ kind }) => kind)).toEqual(['fresh start']);
  });
});

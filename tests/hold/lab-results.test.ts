// A laboratory's result stands beside its jar and changes no judgement, but for a measured count per mL, which doublings use:
// log2 of the final count over the count brought in (check values, arithmetic of a transfer). Invented.
import { expect, it } from 'vitest';
import { must, newSession, smallFamily } from '../ledger/ledger-files';

it('changes nothing but the doublings, and those by a count alone', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const [parent = '', child = ''] = jars;
  const doublings = () => must(session, 'family.get', {}).jars.find(({ id }) => id === child)?.doublings.transfers ?? Number.NaN; // prettier-ignore
  const judged = () => JSON.stringify([
    must(session, 'advice.next', {}).ranking,
    must(session, 'judgement.jar', { jar: child }),
    must(session, 'batch.get', { id: must(session, 'jar.get', { id: child }).batch }).jars.map(({ safety }) => safety),
  ]); // prettier-ignore
  const before = [doublings(), judged()];
  const result = {
    kind: 'labResult' as const,
    laboratory: 'the district laboratory',
    sampledOn: '2026-03-10',
  };
  must(session, 'facts.record', { facts: [{ ...result, jar: child, what: 'fat', value: 3.4, unit: '%' }] });
  must(session, 'facts.record', { facts: [{ ...result, jar: child, what: 'E. coli', value: 10, unit: 'CFU/g', bound: '<' }] }); // prettier-ignore
  expect([doublings(), judged()]).toEqual(before);
  // Four times as many at the end as is assumed: two doublings more.
  must(session, 'facts.record', {
    facts: [{ ...result, jar: child, what: 'count', value: 8e8, unit: 'CFU/mL' }],
  });
  expect(doublings() - Number(before[0])).toBeCloseTo(2, 6);
  must(session, 'facts.record', { facts: [{ ...result, jar: parent, what: 'count', value: 8e8, unit: 'CFU/mL' }] }); // prettier-ignore
  expect(doublings() - Number(before[0])).toBeCloseTo(0, 6);
  session.close();
});

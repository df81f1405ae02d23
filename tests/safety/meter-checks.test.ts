// A meter speaks for a jar only if it was checked in buffer of pH 4.01 that day (trade practice, no source; 4.6: 21 CFR 131.200 as
// amended by 88 FR 22907). Through a real ledger: each reader is told by a check alone, whenever it is noted, and each by none.
import { expect, it } from 'vitest';
import type { Session } from '../../main/session';
import { takeOutGate } from '../../core/safety/take-out';
import {
  ask,
  batchOf,
  fromJar,
  must,
  newSession,
  plainJar,
  smallFamily,
  unseen,
} from '../ledger/ledger-files';

/** Pours like milk, and a meter showed 4.3; its hold ended on 10 March. */
const POURS = { ...unseen, seenAt: 'take-out', setAtTakeOut: false, ph: 4.3, phHow: 'meter' } as const;
const OUT = '2026-03-10';

function kitchen(phChecked?: boolean | null): { session: Session; jar: string } {
  const session = newSession();
  const [founder = ''] = smallFamily(session).jars;
  const held = {
    startedAt: '2026-03-08T18:00:00+00:00',
    endedAt: `${OUT}T06:00:00+00:00`,
    hours: null,
    planned: null,
    probe: null,
    readings: [],
    note: null,
  }; // prettier-ignore;
  const told = phChecked === undefined ? POURS : { ...POURS, phChecked };
  const jar = plainJar('a', { seedings: [fromJar(founder, 20)], hold: 0, outcome: told });
  const { jars } = must(
    session,
    'batch.record',
    batchOf('2026-03-08', [jar], { holds: [held], word: 'metered' }),
  );
  return { session, jar: jars[0] ?? '' };
}

/** What each reader makes of it: the jar, the form over its outcome, the ranking, and recording. */
function said({ session, jar }: ReturnType<typeof kitchen>): unknown {
  const { record, view } = must(session, 'jar.get', { id: jar });
  const { outcome } = record;
  const ranked = must(session, 'advice.next', {}).ranking.find((one) => one.jar === jar);
  const next = batchOf('2026-03-14', [plainJar('z', { seedings: [fromJar(jar, 20)] })], { word: 'next' });
  const done = ask(session, 'batch.record', next);
  if (done.ok) must(session, 'act.undo', { act: null });
  return {
    discard: view.discard,
    form: outcome && takeOutGate(outcome, true).verdict,
    seed: record.safety?.seed,
    allowed: ranked?.allowed,
    refused: done.ok ? null : done.error.code,
  };
}
const NOT_SET = { discard: 'not set', form: 'discard', seed: false, allowed: false, refused: 'seed spoiled' };
const PASSED = { discard: null, form: 'open', seed: true, allowed: true, refused: null };

it('an unchecked meter proves nothing; a check of the day does, noted before or after, until it is undone', () => {
  const at = kitchen();
  expect(said(at)).toEqual(NOT_SET);
  const check = (day: string, shown: number) =>
    must(at.session, 'tool.check', { tool: 'meter', day, shown, unit: 'pH' });
  check('2026-03-09', 4.01);
  expect(said(at)).toEqual(NOT_SET);
  check(OUT, 4.02);
  expect(said(at)).toEqual(PASSED);
  // Of several checks of one day the last counts.
  check(OUT, 4.4);
  expect(said(at)).toEqual(NOT_SET);
  must(at.session, 'act.undo', { act: null });
  expect(said(at)).toEqual(PASSED);
  // What was read off the check is not written down beside the reading.
  const { jar: _jar, ...told } = must(at.session, 'jar.get', { id: at.jar }).record.outcome ?? {
    ...unseen,
    jar: '',
  };
  must(at.session, 'outcome.save', { jar: at.jar, onShelf: null, outcome: { ...told, tang: 'mild' } });
  expect(said(at)).toEqual(PASSED);
  check(OUT, 4.4);
  expect(said(at)).toEqual(NOT_SET);
});

it.each([
  [true, PASSED],
  [false, NOT_SET],
  [null, NOT_SET],
] as const)('the keeper says beside the reading whether it was checked: %s', (checked, expected) => {
  const at = kitchen(checked);
  expect(said(at)).toEqual(expected);
  // That it was not is the keeper's word, whatever was noted of another meter.
  must(at.session, 'tool.check', { tool: 'meter', day: OUT, shown: 4.01, unit: 'pH' });
  expect(said(at)).toEqual(checked === false ? NOT_SET : PASSED);
});

// Appliances with what their newest run proves, and the tools with their newest checks.
import type { Reply } from '../../../core/contract';
import { proofOf } from '../../../core/growth/proof';
import { CHECK_EVERY, checkPasses, type Tool } from '../../../core/growth/tool-checks';
import { storedMoment } from '../../../core/ledger/stored-moments';
import { checkSays, proofLacks, proofSays } from '../../../core/says/appliance-says';
import type { Rows } from '../facts/fact-rows';
import type { Ledger } from '../ledger';
import { readingsIn } from '../entries/series-of-hold';
import { daysBetween } from '../../../core/quantities/typed-days';

type ProofReply = Reply<'appliance.proof'>;
const to = (digits: number, value: number | null): number | null =>
  value === null ? null : Number(value.toFixed(digits));

/** What the run kept as this hold proves. */
export function proofOfHold(facts: Rows, key: number): ProofReply {
  const hold = facts.get('hold', key);
  const series = facts
    .where('series', 'hold', key)
    .map(({ place, spot, block }) => ({ place: place ?? 'bath', spot, readings: readingsIn(facts, block) }));
  const first = series
    .flatMap(({ readings }) => readings[0]?.at ?? [])
    .toSorted((a, b) => storedMoment(a).seconds - storedMoment(b).seconds)[0];
  const zero = storedMoment(hold.began ?? first ?? '1970-01-01T00:00:00Z');
  const hourOfDay = ((((zero.seconds + zero.offset * 60) / 3600) % 24) + 24) % 24;
  const proof = proofOf(
    series.map(({ readings, ...one }) => ({
      ...one,
      readings: readings
        .map(({ at, temperature }) => ({ hour: (storedMoment(at).seconds - zero.seconds) / 3600, celsius: temperature.value }))
        .filter(({ hour }) => hour >= 0),
    })),
    hourOfDay,
    hold.filled,
  ); // prettier-ignore
  const constant = proof.timeConstant;
  return {
    passes: proof.passes,
    says: proofSays(proof),
    lacks: proofLacks(proof),
    began: hold.began,
    hours: to(2, proof.hours) ?? 0,
    settledAt: to(1, proof.settledAt),
    minutesToSettle: proof.minutesToSettle,
    swing: to(2, proof.swing),
    within: to(4, proof.within),
    warmest: to(1, proof.warmest),
    edgeCooler: to(2, proof.edgeCooler),
    jarCooler: to(2, proof.jarCooler),
    timeConstant: constant && {
      low: to(3, constant.low) ?? 0,
      mid: to(3, constant.middle) ?? 0,
      high: Number.isFinite(constant.high) ? to(3, constant.high) : null,
      points: constant.points,
    },
  };
}

/** @throws Refused 'not found' */
export const proofOfRun = ({ rows: facts }: Ledger, hold: string): ProofReply =>
  proofOfHold(facts, facts.keyOf('hold', hold));

export function listAppliances({ rows: facts }: Ledger): Reply<'appliance.list'> {
  return {
    appliances: [...facts.all('appliance')].map(({ key, uid, name, kind }) => {
      const holds = facts.where('hold', 'appliance', key);
      const runs = holds
        .filter(({ purpose }) => purpose === 'proof')
        .toSorted(
          (a, b) =>
            (a.began ? storedMoment(a.began).seconds : 0) - (b.began ? storedMoment(b.began).seconds : 0),
        );
      const newest = runs.at(-1);
      return {
        id: uid,
        name,
        type: kind,
        holds: holds.length - runs.length,
        proof: newest ? proofOfHold(facts, newest.key) : null,
      };
    }),
  };
}

const NEVER: Readonly<Record<Tool, string>> = {
  meter: 'The meter is not noted as checked: until it is, in buffer on the day, it proves nothing.',
  thermometer: 'The thermometer is not noted as checked: put it into ice water.',
  fridge: 'The fridge is not noted as checked: read a glass of water that stood in it overnight.',
};

export function listTools({ rows: facts, clock }: Ledger): Reply<'tool.list'> {
  const checks = [...facts.all('toolCheck')];
  const today = clock.today();
  return {
    tools: (['meter', 'thermometer', 'fridge'] as const).map((tool) => {
      const last = checks
        .filter((check) => check.tool === tool)
        .toSorted((a, b) => (a.day === b.day ? a.key - b.key : a.day < b.day ? -1 : 1))
        .at(-1);
      if (!last) return { tool, day: null, shown: null, passes: null, due: true, says: NEVER[tool] };
      const due = daysBetween(last.day, today) >= CHECK_EVERY[tool];
      return {
        tool,
        day: last.day,
        shown: last.shown,
        passes: checkPasses(last),
        due,
        says: checkSays(last),
      };
    }),
  };
}

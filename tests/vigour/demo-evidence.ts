// The invented scenario as evidence: played into plain records, then read by the program's own adapter.
import { buildFamily } from '../../core/lineage/family';
import { USUAL_TIME_CONSTANT } from '../../core/growth/time-constant';
import { evidenceOf, MADE_AS_EVER, type JarRecord } from '../../core/vigour/evidence';
import { judgeLine, keepersUsual } from '../../core/vigour/line';
import type { JarEvidence } from '../../core/vigour/jar-evidence';
import { play } from '../demo/play';

export const played = play();
export const family = buildFamily(played.records);

const portions = new Map(played.portions.map((portion) => [portion.id, portion]));
const records = played.jars.map((jar): JarRecord => {
  const key = played.key(jar.name);
  const seedings = family.seedsOf(key);
  return {
    key,
    outcome: jar.outcome,
    additions: jar.entry.additions,
    milk: jar.entry.milk,
    made: MADE_AS_EVER,
    hold: jar.hold,
    follows: USUAL_TIME_CONSTANT,
    portions: new Map(
      jar.entry.seedings.flatMap((seeding, i) => {
        const kept = seeding.portion === null ? undefined : portions.get(seeding.portion);
        const found = seedings[i];
        return kept && found
          ? [[found.key, { place: 'freezer' as const, keptOn: kept.keptOn }] as const]
          : [];
      }),
    ),
  };
});

export const evidence: readonly JarEvidence[] = evidenceOf(family, records);
export const lineBatches = family.lines.map((line) => line.batch);
export const lineNamed = (word: string) => {
  const founder = played.jars.find(
    (jar) => jar.name === (word === 'Heron' ? '2025-10-19 a' : '2025-11-05 a'),
  );
  if (!founder) throw new Error(`no line ${word}`);
  const batch = family.jar(played.key(founder.name)).batch;
  return judgeLine(batch, evidence, keepersUsual(lineBatches, evidence), lineBatches.length);
};
export const jarNamed = (name: string): JarEvidence => {
  const found = evidence.find((jar) => jar.key === played.key(name));
  if (!found) throw new Error(`no jar ${name}`);
  return found;
};

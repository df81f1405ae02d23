// A hand-over, version 1: one jar's ancestry as a small file that goes with the jar. Pure. Its first part tells a reader what
// it is about; `records` are the facts themselves (core/ledger/facts), others by their ids and unknowns left out, each after
// all that it points at. What is private, what tells of people, shops or places, and other jars are not in it.
import { z } from 'zod';
import { Uid } from '../ledger/basics';
import type { FactKind } from '../ledger/facts/all-facts';
import { AboutJar } from '../shapes/hand-over-calls';

export const HAND_OVER_FORMAT = 'jarline hand-over';
/** Raised when an older program could not read what a newer one writes. */
export const HAND_OVER_VERSION = 1;
/** No hand-over is longer (bytes), and none holds more records. */
export const MOST_HAND_OVER = 20 * 1024 * 1024;
export const MOST_HANDED = 200_000;

/** Kinds that go with a jar. No other kind is taken in, whatever a file says. */
export const HANDED_KINDS = [
  'source', 'strain', 'package', 'batch', 'jar', 'milk', 'addition', 'portion', 'seeding', 'use', 'hold', 'stay', 'interruption',
  'observation', 'acidity', 'remark', 'sign', 'reason', 'lift', 'liftKnew', 'labResult', 'movement',
] as const satisfies readonly FactKind[]; // prettier-ignore

const whole = z.int().min(1).max(1_000_000_000);

/** The file. */
export const HandOver = z.strictObject({
  format: z.literal(HAND_OVER_FORMAT),
  version: z.literal(HAND_OVER_VERSION),
  /** Its own id, kept with the giver's note of it. */
  id: Uid,
  /** The ledger that hands it over; of the invented ledger nothing comes into a keeper's. */
  ledger: z.strictObject({ id: Uid, demo: z.boolean() }),
  jar: Uid,
  about: AboutJar,
  records: z
    .array(
      z.strictObject({
        id: Uid, kind: z.enum(HANDED_KINDS), home: Uid, homeForm: whole,
        form: z.record(z.string().max(50), z.unknown()),
      }),
    )
    .min(1)
    .max(MOST_HANDED),
}); // prettier-ignore
export type HandOver = z.infer<typeof HandOver>;

/** Enough to know what it is before the rest is believed. */
export const HandOverHead = z.looseObject({ format: z.literal(HAND_OVER_FORMAT), version: z.int().min(1) });

// What the parts of this screen pass on to each other.
import type { Reply } from '../../core/contract';

export type Trials = Reply<'trial.list'>;
export type Trial = Trials['trials'][number];
export type TrialJar = Trial['treatments'][number];
export type Taster = Trials['tasters'][number];
export type Session = Reply<'session.get'>;

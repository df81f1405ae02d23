// Names of every call and event. Apart from contract.ts so that the sandboxed preload needs no zod.
export const READS = [
  'app.state', 'family.get', 'family.drawing', 'family.jars', 'jar.get', 'jar.find', 'batch.get', 'batch.card', 'batch.list',
  'source.list', 'package.list', 'addition.usual', 'history.list', 'draft.list', 'advice.freshStart', 'photograph.list', 'photograph.line', 'line.list', 'family.now',
  'judgement.line', 'judgement.jar', 'judgement.scores', 'advice.line', 'advice.next', 'advice.restart', 'advice.choices',
  'facts.list', 'readings.list', 'jar.left', 'received.list', 'handOver.list', 'handOver.about', 'label.sheet', 'report.get', 'act.standing',
  'appliance.list', 'appliance.proof', 'tool.list', 'trial.list', 'trial.reach', 'trial.propose', 'session.get', 'session.pour',
  'plan.batch', 'hold.now', 'hold.get', 'hold.list', 'today.list', 'readings.preview', 'calendar.get', 'cost.list', 'cost.sheet', 'shelf.get',
  'remarks.list', 'caution.list',
] as const; // prettier-ignore
export const WRITES = [
  'batch.record', 'batch.made', 'batch.addJar', 'batch.addHold', 'batch.correct', 'hold.correct', 'jar.correct', 'jars.correct', 'jar.mistake', 'jar.lost', 'jars.remember', 'seeding.set',
  'addition.set', 'portion.save', 'outcome.save', 'source.save', 'package.save', 'caution.clear', 'draft.save',
  'draft.drop', 'act.undo', 'act.undoMany', 'act.redo', 'preferences.save', 'photograph.add', 'photograph.correct',
  'photograph.remove', 'advice.choose', 'line.name', 'facts.record', 'facts.correct', 'facts.remove', 'readings.add', 'readings.leaveOut', 'received.decide', 'batch.about', 'remarks.answer',
  'hold.takeOut', 'hold.putIn', 'hold.move', 'hold.interrupt', 'hold.look', 'readings.note',
  'readings.bringIn', 'appliance.save', 'appliance.prove', 'tool.check',
  'trial.save', 'session.start', 'session.reveal', 'mark.record',
  'shelf.open', 'shelf.eat', 'shelf.give', 'shelf.freeze', 'shelf.thaw', 'shelf.discard', 'shelf.keep', 'shelf.answer', 'shelf.limits', 'plan.awake', 'cost.prices',
] as const; // prettier-ignore
export const JOBS = [
  'notes.preview', 'notes.bringIn', 'ledger.open', 'ledger.openDemo', 'ledger.leaveDemo', 'ledger.create', 'ledger.fromArchive', 'ledger.recover', 'ledger.backup',
  'ledger.backups', 'ledger.restore', 'archive.write', 'archive.read', 'tables.write', 'label.print', 'camera.ask', 'report.print', 'report.write', 'calendar.write', 'handOver.write', 'handOver.preview', 'handOver.read',
] as const; // prettier-ignore
/** Sent by main, never answered: a job's progress; a ledger changed; a menu item was chosen; the system hands a jar's file over. */
export const EVENTS = ['progress', 'changed', 'menu', 'handed'] as const;

/** What a menu event names; the page does it, so that errors and progress show in one place. */
const MENU_IDS = [
  'ledger.open', 'ledger.create', 'ledger.backup', 'backups', 'ledger.openDemo', 'notes.bringIn', 'ledger.fromArchive', 'out', 'reports', 'receive', 'find', 'undo', 'redo', 'preferences',
  'screen.family', 'screen.batch', 'screen.hold', 'screen.shelf', 'screen.vigour', 'screen.trials', 'screen.sources', 'screen.costs', 'screen.history', 'theme.system', 'theme.light', 'theme.dark',
] as const; // prettier-ignore
export type MenuId = (typeof MENU_IDS)[number];

export const CALLS = [...READS, ...WRITES, ...JOBS] as const;
export type ReadName = (typeof READS)[number];
export type WriteName = (typeof WRITES)[number];
export type JobName = (typeof JOBS)[number];
export type CallName = (typeof CALLS)[number];
export type EventName = (typeof EVENTS)[number];

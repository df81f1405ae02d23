// Binds each call of the contract to its handler. A call without one is a type error here.
import type { Parsed, Reply } from '../core/contract';
import { readArchive } from './archive/read-archive';
import { writeArchive } from './archive/write-archive';
import { previewHandOver, readHandOver } from './hand-over/read-hand-over';
import { aboutHandOver, listHandOvers, writeHandOver } from './hand-over/write-hand-over';
import type { Job } from './ledger/job';
import type { WorkerCall } from './ledger/worker-protocol';
import { bringInNotes, previewNotes } from './ledger/bring-in-notes';
import { listCosts } from './ledger/reads/read-costs';
import { hostOf } from './ledger/host-of-facts';
import { leftOf, listFacts, listReadings } from './ledger/reads/read-facts';
import { familyNow } from './ledger/reads/read-now';
import { drawing, familyJars, freshStarts, getFamily, listLines } from './ledger/reads/read-family';
import { getShelf } from './ledger/reads/read-shelf';
import {
  answerShelf,
  discardKept,
  eatKept,
  freezeKept,
  giveKept,
  keepForSeed,
  openKept,
  thawKept,
} from './ledger/writes/write-shelf';
import { getCostSheet } from './ledger/reads/read-cost-sheet';
import { changeLimits, saveAwake, savePrices } from './ledger/writes/write-settings';
import { listHistory, standingOn } from './ledger/reads/read-history';
import { findJar, getJar } from './ledger/reads/read-jars';
import {
  judgeOneJar,
  judgeOneLine,
  lineAdvice,
  nextAdvice,
  restartAdvice,
  scoresOf,
} from './ledger/reads/read-judgement';
import {
  getBatch,
  listBatches,
  listDrafts,
  listPackages,
  usualAmounts,
  listPhotographs,
  listSources,
  photographsAlong,
} from './ledger/reads/read-lists';
import { listChoices } from './ledger/reads/read-choices';
import { Refused } from './refusal';
import type { OpenSession } from './open-session';
import { redo, undo, undoMany } from './ledger/undo';
import {
  addHold,
  addJar,
  correctBatch,
  correctHold,
  nameLine,
  recordBatch,
  tellAbout,
} from './ledger/writes/write-batch';
import { rememberJars } from './ledger/writes/write-remembered';
import { makePlanned } from './ledger/writes/write-made';
import { correctFact, recordFacts, removeFact } from './ledger/writes/write-facts';
import { listAppliances, listTools, proofOfRun } from './ledger/reads/read-appliances';
import { checkTool, proveAppliance, saveAppliance } from './ledger/writes/write-appliance';
import { askReach, getPouring, getTasting } from './ledger/reads/read-trials';
import { listTrials, proposeTrial } from './ledger/reads/trial-list';
import { calendarOf, holdsNow, planBatch } from './ledger/reads/read-plan';
import { recordMarks, reveal, saveTrial, startTasting } from './ledger/writes/write-trial';
import { getHold, listHolds } from './ledger/reads/read-hold';
import { todayList } from './ledger/reads/read-today';
import { interrupt, moveJars, noteLook, noteReading, putIn, takeOut } from './ledger/writes/write-hold';
import { bringInReadings, previewReadings } from './ledger/writes/write-export';
import { addReadings, leaveOutReadings } from './ledger/writes/write-readings';
import { decideOn, listReceived } from './ledger/facts/received';
import { chooseSeed } from './ledger/writes/write-choice';
import {
  addLostJar,
  clearCaution,
  correctJar,
  correctJars,
  markMistake,
  saveOutcome,
  setAdditions,
  setSeedings,
} from './ledger/writes/write-jars';
import { addPhotograph, correctPhotograph, removePhotograph } from './ledger/writes/write-photographs';
import {
  dropDraft,
  saveDraft,
  savePackage,
  savePortion,
  savePreferences,
  saveSource,
} from './ledger/writes/write-larder';

import { writeCalendar } from './calendar/write-calendar';
import { labelSheets } from './labels/label-sheets';
import { cardOfBatch } from './reports/gather-card';
import { makeReport, writeReport } from './reports/make-report';
import { writeTables } from './tables/write-tables';
import { cautionsBecauseOf } from './ledger/reads/read-views';
import { listRemarks } from './ledger/reads/read-remarks';
import { answerRemarks } from './ledger/writes/write-remarks';

export type Handlers = {
  readonly [N in WorkerCall]: (session: OpenSession, input: Parsed<N>, job: Job) => Reply<N>;
};

export const handlers: Handlers = {
  'app.state': (session) => session.state(),
  'family.get': ({ ledger }) => getFamily(ledger),
  'family.drawing': ({ ledger }, input) => drawing(ledger, input),
  'family.jars': ({ ledger }, input) => familyJars(ledger, input),
  'jar.get': ({ ledger }, input) => getJar(ledger, input),
  'jar.find': ({ ledger }, input) => findJar(ledger, input),
  'batch.get': ({ ledger }, input) => getBatch(ledger, input),
  'batch.card': ({ ledger }, input) => cardOfBatch(ledger, input),
  'batch.list': ({ ledger }, input) => listBatches(ledger, input),
  'source.list': ({ ledger }) => listSources(ledger),
  'package.list': ({ ledger }) => listPackages(ledger),
  'addition.usual': ({ ledger }) => usualAmounts(ledger),
  'cost.list': ({ ledger }) => listCosts(ledger),
  'history.list': ({ ledger }, input) => listHistory(ledger, input),
  'cost.sheet': ({ ledger }) => getCostSheet(ledger),
  'shelf.get': ({ ledger }) => getShelf(ledger),
  'draft.list': ({ ledger }) => listDrafts(ledger),
  'advice.freshStart': ({ ledger }) => freshStarts(ledger),
  'judgement.line': ({ ledger }, input) => judgeOneLine(ledger, input),
  'judgement.scores': ({ ledger }, input) => scoresOf(ledger, input),
  'judgement.jar': ({ ledger }, input) => judgeOneJar(ledger, input),
  'advice.line': ({ ledger }, input) => lineAdvice(ledger, input),
  'advice.next': ({ ledger }, input) => nextAdvice(ledger, input),
  'advice.restart': ({ ledger }, input) => restartAdvice(ledger, input),
  'advice.choices': ({ ledger }, input) => listChoices(ledger, input),
  'facts.list': ({ ledger }, input) => listFacts(hostOf(ledger), input),
  'received.list': ({ ledger }) => listReceived(hostOf(ledger)),
  'readings.list': ({ ledger }, input) => listReadings(hostOf(ledger), input),
  'act.standing': ({ ledger }, input) => standingOn(ledger, input),
  'caution.list': ({ ledger }, input) => cautionsBecauseOf(ledger, input),
  'remarks.list': ({ ledger }, input) => listRemarks(ledger, input),
  'jar.left': ({ ledger }, input) => leftOf(hostOf(ledger), input),
  'family.now': ({ ledger }) => familyNow(ledger),
  'line.list': ({ ledger }, input) => listLines(ledger, input),
  'photograph.line': ({ ledger }, input) => photographsAlong(ledger, input),
  'photograph.list': ({ ledger }, input) => listPhotographs(ledger, input),

  'batch.record': ({ ledger }, input) => recordBatch(ledger, input),
  'batch.addJar': ({ ledger }, input) => addJar(ledger, input),
  'batch.made': ({ ledger }, input) => makePlanned(ledger, input),
  'batch.addHold': ({ ledger }, input) => addHold(ledger, input),
  'batch.correct': ({ ledger }, input) => correctBatch(ledger, input),
  'hold.correct': ({ ledger }, input) => correctHold(ledger, input),
  'jar.correct': ({ ledger }, input) => correctJar(ledger, input),
  'jars.correct': ({ ledger }, input) => correctJars(ledger, input),
  'jar.mistake': ({ ledger }, input) => markMistake(ledger, input),
  'jar.lost': ({ ledger }, input) => addLostJar(ledger, input),
  'jars.remember': ({ ledger }, input) => rememberJars(ledger, input),
  'seeding.set': ({ ledger }, input) => setSeedings(ledger, input),
  'addition.set': ({ ledger }, input) => setAdditions(ledger, input),
  'portion.save': ({ ledger }, input) => savePortion(ledger, input),
  'outcome.save': ({ ledger }, input) => saveOutcome(ledger, input),
  'shelf.open': ({ ledger }, input) => openKept(ledger, input),
  'shelf.eat': ({ ledger }, input) => eatKept(ledger, input),
  'shelf.give': ({ ledger }, input) => giveKept(ledger, input),
  'shelf.freeze': ({ ledger }, input) => freezeKept(ledger, input),
  'shelf.thaw': ({ ledger }, input) => thawKept(ledger, input),
  'shelf.discard': ({ ledger }, input) => discardKept(ledger, input),
  'shelf.keep': ({ ledger }, input) => keepForSeed(ledger, input),
  'shelf.answer': ({ ledger }, input) => answerShelf(ledger, input),
  'shelf.limits': ({ ledger }, input) => changeLimits(ledger, input),
  'plan.awake': ({ ledger }, input) => saveAwake(ledger, input),
  'cost.prices': ({ ledger }, input) => savePrices(ledger, input),
  'source.save': ({ ledger }, input) => saveSource(ledger, input),
  'package.save': ({ ledger }, input) => savePackage(ledger, input),
  'caution.clear': ({ ledger }, input) => clearCaution(ledger, input),
  'draft.save': ({ ledger }, input) => saveDraft(ledger, input),
  'draft.drop': ({ ledger }, input) => dropDraft(ledger, input),
  'act.undo': ({ ledger }, { act }) => {
    const done = undo(ledger.acts, act);
    return { act: done.act.uid, says: done.value };
  },
  'act.undoMany': ({ ledger }, { acts, later }) => {
    const done = undoMany(ledger.acts, acts, later);
    return { act: done.act.uid, says: done.value };
  },
  'act.redo': ({ ledger }) => {
    const done = redo(ledger.acts);
    return { act: done.act.uid, says: done.value };
  },
  'preferences.save': ({ ledger }, input) => savePreferences(ledger, input),
  'photograph.add': ({ ledger }, input) => addPhotograph(ledger, input),
  'photograph.correct': ({ ledger }, input) => correctPhotograph(ledger, input),
  'photograph.remove': ({ ledger }, input) => removePhotograph(ledger, input),
  'facts.record': ({ ledger }, input) => recordFacts(hostOf(ledger), input),
  'facts.correct': ({ ledger }, input) => correctFact(hostOf(ledger), input),
  'facts.remove': ({ ledger }, input) => removeFact(hostOf(ledger), input),
  'readings.leaveOut': ({ ledger }, input) => leaveOutReadings(hostOf(ledger), input),
  'remarks.answer': ({ ledger }, input) => answerRemarks(ledger, input),
  'received.decide': ({ ledger }, input) => decideOn(hostOf(ledger), input),
  'batch.about': ({ ledger }, input) => tellAbout(ledger, input),
  'readings.add': ({ ledger }, input) => addReadings(hostOf(ledger), input),
  'appliance.list': ({ ledger }) => listAppliances(ledger),
  'appliance.proof': ({ ledger }, { hold }) => proofOfRun(ledger, hold),
  'appliance.save': ({ ledger }, input) => saveAppliance(ledger, input),
  'appliance.prove': ({ ledger }, input) => proveAppliance(ledger, input),
  'tool.list': ({ ledger }) => listTools(ledger),
  'tool.check': ({ ledger }, input) => checkTool(ledger, input),
  'plan.batch': ({ ledger }, input) => planBatch(ledger, input),
  'hold.get': ({ ledger }, input) => getHold(ledger, input),
  'hold.list': ({ ledger }) => listHolds(ledger),
  'today.list': ({ ledger }) => todayList(ledger),
  'hold.takeOut': ({ ledger }, input) => takeOut(ledger, input),
  'hold.putIn': ({ ledger }, input) => putIn(ledger, input),
  'hold.move': ({ ledger }, input) => moveJars(ledger, input),
  'hold.interrupt': ({ ledger }, input) => interrupt(ledger, input),
  'hold.look': ({ ledger }, input) => noteLook(ledger, input),
  'readings.note': ({ ledger }, input) => noteReading(ledger, input),
  'readings.preview': ({ ledger }, input) => previewReadings(ledger, input),
  'hold.now': ({ ledger }) => holdsNow(ledger),
  'calendar.get': ({ ledger }) => calendarOf(ledger),
  'trial.list': ({ ledger }) => listTrials(ledger),
  'trial.reach': (_, input) => askReach(input),
  'trial.propose': ({ ledger }, input) => proposeTrial(ledger, input),
  'trial.save': ({ ledger }, input) => saveTrial(ledger, input),
  'session.start': ({ ledger }, input) => startTasting(ledger, input),
  'session.get': ({ ledger }, input) => getTasting(ledger, input),
  'session.pour': ({ ledger }, input) => getPouring(ledger, input),
  'session.reveal': ({ ledger }, input) => reveal(ledger, input),
  'mark.record': ({ ledger }, input) => recordMarks(ledger, input),
  'readings.bringIn': ({ ledger }, input) => bringInReadings(ledger, input),
  'advice.choose': ({ ledger }, input) => chooseSeed(ledger, input),
  'line.name': ({ ledger }, input) => nameLine(ledger, input),

  'notes.preview': ({ ledger }, input, job) => previewNotes(ledger, input, job),
  'notes.bringIn': ({ ledger }, input, job) => bringInNotes(ledger, input, job),

  'archive.write': ({ ledger }, input, job) => writeArchive(ledger, input, job),
  'archive.read': ({ ledger }, input, job) => readArchive(ledger, input, job),

  'calendar.write': ({ ledger }, input) => writeCalendar(ledger, input),
  'label.sheet': ({ ledger }, input) => labelSheets(ledger, input),
  'report.get': ({ ledger }, input) => makeReport(ledger, input),
  'report.write': ({ ledger }, input) => writeReport(ledger, input),
  'tables.write': ({ ledger }, input, job) => writeTables(ledger, input, job),

  'handOver.list': ({ ledger }) => listHandOvers(ledger),
  'handOver.about': ({ ledger }, input) => aboutHandOver(ledger, input),
  'handOver.write': ({ ledger }, input, job) => writeHandOver(ledger, input, job),
  'handOver.preview': ({ ledger }, input, job) => previewHandOver(ledger, input, job),
  'handOver.read': ({ ledger }, input, job) => readHandOver(ledger, input, job),

  'ledger.backup': (session) => session.backup(),
  'ledger.backups': (session) => session.backups(),
  'ledger.restore': (session, { backup }) => session.restore(backup),
  'ledger.recover': (session, { how }) => {
    if (how === 'show folder') throw new Refused('not from here', { name: 'show folder' });
    return session.recover(how);
  },
};

// Reading a keeper's spreadsheet: from text to what it adds, and to every problem, question and assumption.
export type {
  LedgerFacts,
  LedgerJar,
  LedgerView,
  NotedForm,
  NotedRow,
  NotesInput,
  NotesPlan,
  NotesReading,
  PlannedChange,
  PlannedJar,
  PlannedSeeding,
} from './notes-plan';
export { KeptStages } from './kept-stages';
export { readNotes } from './read-notes';
export { countStates, paged, pageOf, shareAssumptions, type Paged } from './plan/pages';
export { doubtedRow, remarksOfPlan, rowReadAs, suspiciousReadAs } from './plan/remarks-of-plan';
export { sheetQuestion, sheetsCounted } from './plan/telling';

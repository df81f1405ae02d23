// Reading a keeper's spreadsheet: from text to what it adds, and to every problem, question and assumption.
export type {
  LedgerFacts,
  LedgerJar,
  LedgerView,
  NotesInput,
  NotesPlan,
  NotesReading,
  PlannedChange,
  PlannedJar,
  PlannedSeeding,
} from './plan';
export { readNotes } from './reading';
export { sheetQuestion } from './telling';

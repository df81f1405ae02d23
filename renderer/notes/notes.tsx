// Bringing in a spreadsheet: choose a file, see what each row is taken to mean, mend and answer, bring it in.
import { ChooseFile } from './choose-file';
import { Done } from './done';
import './notes.css';
import { useNotes } from './notes-store';
import { Preview } from './preview';

/** The screen for bringing in notes. */
export function BringIn() {
  const notes = useNotes();
  if (notes.file === null) return <ChooseFile trouble={notes.trouble} />;
  if (notes.result !== null) return <Done result={notes.result} />;
  return <Preview notes={notes} />;
}

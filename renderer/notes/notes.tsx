// Bringing in a spreadsheet: choose a file, see what each row is taken to mean, mend and answer, bring it in.
import { useEffect } from 'react';
import { useRevision } from '../app/store';
import { ChooseFile } from './choose-file';
import { Done } from './done';
import './notes.css';
import { freshen, useNotes } from './notes-store';
import { Preview } from './preview';

/** The screen for bringing in notes. */
export function BringIn() {
  const notes = useNotes();
  const revision = useRevision();
  useEffect(() => freshen(revision), [revision]);
  if (notes.file === null) return <ChooseFile trouble={notes.trouble} />;
  if (notes.result !== null) return <Done result={notes.result} />;
  return <Preview notes={notes} />;
}

// Bringing in a spreadsheet: choose a file, see what each row is taken to mean, mend and answer, bring it in.
import { useEffect } from 'react';
import { useAppState, useRevision } from '../state/store';
import { ChooseFile } from './choose-file';
import { DemoNotice } from './demo-notice';
import { Done } from './done';
import './notes.css';
import { freshen, useNotes } from './notes-store';
import { Preview } from './notes-preview';

/** The screen for bringing in notes. Invented jars and a keeper's own never mix. */
export function BringIn() {
  return useAppState()?.ledger?.demo ? <DemoNotice /> : <OwnNotes />;
}

function OwnNotes() {
  const notes = useNotes();
  const revision = useRevision();
  useEffect(() => freshen(revision), [revision]);
  if (notes.file === null) return <ChooseFile trouble={notes.trouble} />;
  if (notes.result !== null) return <Done result={notes.result} />;
  return <Preview notes={notes} />;
}

// The whole ledger as files: an archive that comes back without loss, or tables for a spreadsheet program; and back in.
import { say, useAppState } from '../state/store';
import { JobLine, OutPanel } from './out-panel';
import { showOut } from './out-shown';
import { useJob } from './use-job';

export function TakeEverythingOut() {
  const ledger = useAppState()?.ledger;
  const job = useJob();
  const name = ledger?.name ?? 'jarline';
  const busy = job.progress !== null;
  const archive = async (): Promise<void> => {
    const done = await job.run('archive.write', { file: { name: `${name} archive.zip` } });
    if (done.ok) say(`All of it lies in ${done.value.file}.${done.value.missing > 0 ? ` ${done.value.missing} photographs were not found beside the ledger.` : ''}`);
    else if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
  }; // prettier-ignore
  const tables = async (): Promise<void> => {
    const done = await job.run('tables.write', { folder: { name: `${name} tables` } });
    if (done.ok) say(`${done.value.files} files lie in ${done.value.folder}.`);
    else if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
  };
  const back = async (): Promise<void> => {
    const done = await job.run('ledger.fromArchive', { archive: null, file: null });
    if (done.ok) {
      showOut(null);
      say('The archive is open as a ledger of its own.');
    } else if (done.error.code !== 'cancelled') say(done.sentence, 'caution');
  };
  return (
    <OutPanel title="Take everything out">
      <section className="stack">
        <h3>As one archive</h3>
        <p>
          Every jar, every change with its undo, and the photographs, in one file. A new ledger made from it
          is the same again: so it goes to another computer.
        </p>
        <div className="row">
          <button className="button primary" type="button" disabled={busy} onClick={() => void archive()}>
            Write an archive…
          </button>
          <button className="button" type="button" disabled={busy} onClick={() => void back()}>
            Open an archive as a new ledger…
          </button>
        </div>
      </section>
      <section className="stack">
        <h3>As tables</h3>
        <p>
          Plain tables that any spreadsheet program opens. “Bring in a spreadsheet” reads the table of jars
          back as the same family.
        </p>
        <div className="row">
          <button className="button" type="button" disabled={busy} onClick={() => void tables()}>
            Write tables…
          </button>
        </div>
      </section>
      <JobLine job={job} />
      <p className="soft small">
        Private remarks, prices and names are in both. To give a jar away, hand it over from its own pane.
      </p>
    </OutPanel>
  );
}

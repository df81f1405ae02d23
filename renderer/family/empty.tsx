// A ledger with no jars yet: says what will stand here, and starts the job.
import { go } from '../state/store';
import { FLAG } from '../../core/shapes/drawing-flags';
import { JarPicture } from '../parts/jar-shape';

export function EmptyFamily() {
  return (
    <div className="page empty-family stack">
      <div className="empty-jars" aria-hidden="true">
        <JarPicture generation={1} setWord={2} flags={FLAG.outcomeKnown} />
        <JarPicture generation={2} setWord={3} flags={FLAG.outcomeKnown} />
        <JarPicture generation={3} setWord={255} flags={0} />
      </div>
      <h1>No jars yet</h1>
      <p>
        The family of your jars will stand here: which jar seeded which, and how many generations each is from
        the capsules or the culture you began with.
      </p>
      <div className="row">
        <button className="button primary" type="button" onClick={() => go('batch')}>
          Record the first batch
        </button>
        <button className="button" type="button" onClick={() => go('notes', 'choose')}>
          Bring in a spreadsheet
        </button>
      </div>
    </div>
  );
}

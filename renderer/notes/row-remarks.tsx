// What rows say in words, before they come in: what may tell of spoilage first, each with the keeper's three answers, and many
// answered with one press. What nobody answers stays a remark that nobody has answered.
import { useId } from 'react';
import type { NotesPreview } from '../../core/contract';
import { quotedEnd } from '../../core/says/quoted-end';
import { REMARK_STOPS } from '../../core/says/safety-says';
import { READ_AS_LABELS } from '../parts/unanswered';
import { count, type Pages } from './note-lists';
import { answer, look, REMARKS_SHOWN } from './notes-store';
import { Pager } from './pager';

type Remark = NonNullable<NotesPreview['remarks']>[number];

function One({ remark }: { readonly remark: Remark }) {
  const name = useId();
  return (
    <li className={remark.stops ? 'ask urgent' : 'ask'}>
      <fieldset>
        <legend>
          <span className="row-number">Row {remark.row}</span> {remark.label !== null && `${remark.label} `}
          says: {quotedEnd(remark.text)}
        </legend>
        {remark.stops && <p>{REMARK_STOPS}</p>}
        <div className="row">
          {READ_AS_LABELS.map(([readAs, label]) => (
            <label key={readAs} className="pick">
              <input
                type="radio"
                name={name}
                checked={remark.readAs === readAs}
                onChange={() => answer(remark.id, readAs)}
              />
              <span>{label}</span>
            </label>
          ))}
        </div>
      </fieldset>
    </li>
  );
}

/** A page of the remarks. */
export function RowRemarks({
  remarks,
  pages,
  from,
}: {
  readonly remarks: readonly Remark[];
  readonly pages: Pages;
  readonly from: number;
}) {
  const title = useId();
  const { telling, doubted, others } = pages.unread;
  if (pages.remarks === 0) return null;
  const page = {
    from,
    to: Math.min(pages.remarks, from + REMARKS_SHOWN),
    of: pages.remarks,
    turn: (by: number) => look({ remarks: Math.max(0, from + by * REMARKS_SHOWN) }),
  };
  return (
    <section className="notes-part" aria-labelledby={title}>
      <h2 id={title}>What the rows say</h2>
      <p className="soft">
        {pages.telling === 0
          ? 'None tells'
          : pages.telling === 1
            ? 'One tells'
            : `${count(pages.telling, 'row')} tell`}{' '}
        of spoilage in plain words. What you don’t answer comes in as not answered, and is quoted wherever its
        jar is offered.
      </p>
      <div className="row">
        {telling > 0 && (
          <button className="button" type="button" onClick={() => answer('remark:suspicious', 'discard')}>
            {telling === 1
              ? 'Discard the one that tells of spoilage'
              : `Discard all ${telling} that tell of spoilage`}
          </button>
        )}
        {others > 0 && (
          <button className="button" type="button" onClick={() => answer('remark:others', 'fine')}>
            {others === 1 ? 'The other is fine' : `All ${others} others are fine`}
          </button>
        )}
      </div>
      {doubted > 0 && (
        <p className="soft">
          {doubted === 1 ? 'One row is' : `${count(doubted, 'row')} are`} in doubt for another reason, such as
          a power cut or its warmth: answer {doubted === 1 ? 'it' : 'each'} by itself.
        </p>
      )}
      <ul className="stack">
        {remarks.map((remark) => (
          <One key={remark.id} remark={remark} />
        ))}
      </ul>
      <Pager page={page} what="remarks" />
    </section>
  );
}

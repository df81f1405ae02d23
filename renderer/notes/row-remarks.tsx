// What rows say in words, before they come in: what may tell of spoilage first, each with the keeper's three answers, and many
// answered with one press. What nobody answers stays a remark that nobody has answered.
import { useId, useState } from 'react';
import type { NotesPreview } from '../../core/contract';
import { quotedEnd } from '../../core/says/quoted-end';
import { REMARK_STOPS } from '../../core/says/safety-says';
import { READ_AS_LABELS } from '../parts/unanswered';
import {
  allAnswered,
  allFine,
  discardAll,
  doubtedSays,
  quietSays,
  tellingSays,
} from '../../core/says/sheet-says';
import type { Pages } from './note-lists';
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
          says: <span className="remark-text">{quotedEnd(remark.text)}</span>
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

/** Says of many rows at once how they are read; it stays where it is when nothing is left to answer. */
function ForAll({
  left,
  of,
  id,
  readAs,
  says,
}: {
  readonly left: number;
  readonly of: number;
  readonly id: string;
  readonly readAs: 'fine' | 'discard';
  readonly says: (rows: number) => string;
}) {
  return (
    <button className="button" type="button" disabled={left === 0} onClick={() => answer(id, readAs)}>
      {left === 0 ? allAnswered(of) : says(left)}
    </button>
  );
}

/** A page of the remarks: those that matter to safety, and behind one line those that say nothing of it. */
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
  const [open, setOpen] = useState(false);
  const { telling, others } = pages.unread;
  if (pages.remarks === 0) return null;
  const first = pages.telling + pages.doubted;
  const rest = pages.remarks - first;
  const silent = pages.rows.new + pages.rows.changes - pages.remarks;
  const of = open ? pages.remarks : first;
  const page = {
    from,
    to: Math.min(of, from + REMARKS_SHOWN),
    of,
    turn: (by: number) => look({ remarks: Math.max(0, from + by * REMARKS_SHOWN) }),
  };
  const safety = remarks.filter(({ tells, doubted }) => tells || doubted);
  const quiet = remarks.filter(({ tells, doubted }) => !tells && !doubted);
  return (
    <section className="notes-part" aria-labelledby={title}>
      <h2 id={title}>What the rows say</h2>
      <p className="soft">{tellingSays(pages.telling, silent)}</p>
      {pages.telling > 0 && (
        <div className="row">
          <ForAll
            left={telling}
            of={pages.telling}
            id="remark:suspicious"
            readAs="discard"
            says={discardAll}
          />
        </div>
      )}
      {pages.doubted > 0 && <p className="soft">{doubtedSays(pages.doubted)}</p>}
      <List remarks={safety} />
      {rest > 0 && (
        <>
          <div className="row">
            <button
              className="button quiet"
              type="button"
              aria-expanded={open}
              onClick={() => {
                setOpen(!open);
                // Closed, no page lies beyond the remarks that matter to safety.
                if (open) look({ remarks: 0 });
              }}
            >
              {quietSays(rest)}
            </button>
            <ForAll
              left={others}
              of={rest}
              id="remark:others"
              readAs="fine"
              says={(rows) => allFine(rows, first > 0)}
            />
          </div>
          {open && <List remarks={quiet} />}
        </>
      )}
      <Pager page={page} what="remarks" />
    </section>
  );
}

function List({ remarks }: { readonly remarks: readonly Remark[] }) {
  return remarks.length === 0 ? null : (
    <ul className="stack">
      {remarks.map((remark) => (
        <One key={remark.id} remark={remark} />
      ))}
    </ul>
  );
}

// What goes into which bowl: for whoever pours, hidden before the first taster comes.
import { useEffect, useRef } from 'react';
import { useRead } from '../state/use-read';
import { Bowl } from './bowl';

export function PouringSheet({ session, onDone }: { readonly session: string; readonly onDone: () => void }) {
  const answer = useRead('session.pour', { session });
  const done = useRef<HTMLButtonElement>(null);
  const ready = answer !== null;
  useEffect(() => {
    if (ready) done.current?.focus();
  }, [ready]);
  if (answer === null) return <div aria-busy="true" />;
  if (!answer.ok) return <p className="notice caution">{answer.sentence}</p>;
  const { says, bowls } = answer.value;
  return (
    <section className="stack" aria-label="Pouring">
      <h1>Pour the bowls</h1>
      <p className="tasting-lead">Only whoever pours looks here: it says which jar is which.</p>
      <ul className="bullets">
        {says.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <ul className="pouring">
        {bowls.map(({ jar, label, treatment, codes }) => (
          <li key={jar}>
            <p>
              <strong>{label}</strong>, {treatment}
            </p>
            <ul className="pouring-bowls">
              {codes.map(({ code, taster, place }) => (
                <li key={code}>
                  <Bowl text={String(code)} />
                  <span className="visually-hidden">{code}</span>
                  <span className="small">
                    {taster}, bowl {place}
                  </span>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      <div className="row">
        <button ref={done} type="button" className="button primary" onClick={onDone}>
          All is poured: hide this
        </button>
      </div>
    </section>
  );
}

// What is written anywhere in the ledger and nobody has answered, after a file came in and wherever a file is chosen: what was left
// for later is found there. What may tell of spoilage comes first.
import { useRead } from '../state/use-read';
import { Remarks } from '../parts/unanswered';

const MOST = 60;

export function UnreadRemarks() {
  const answer = useRead('remarks.list', { limit: MOST });
  if (answer?.ok !== true || answer.value.remarks.length === 0) return null;
  const { remarks, unread, stopping } = answer.value;
  return (
    <section className="stack">
      <h2>{unread === 1 ? 'One note is not answered' : `${unread} notes are not answered`}</h2>
      <p>
        {stopping > 0
          ? `${stopping === 1 ? 'One tells' : `${stopping} tell`} of spoilage: until you answer, such a jar is neither food nor seed. `
          : ''}
        The others are quoted wherever their jar is offered. You can answer later, here or on the card of the
        jar.
      </p>
      <Remarks
        open
        remarks={remarks.map(({ jars, about, ...remark }) => ({
          ...remark,
          about: `${jars.map(({ label }) => label).join(', ')}${about > jars.length ? ` and ${about - jars.length} other jars` : ''}`,
        }))}
      />
      {remarks.length < unread && (
        <p className="soft">{unread - remarks.length} more come up once these are answered.</p>
      )}
    </section>
  );
}

// Correcting something in place: the fields, a reason if the keeper wants to give one, save or leave it as it was.
// What was typed survives a crash, and a refusal keeps it in its fields.
import type { ReactNode } from 'react';
import { EditQuestions } from './edit-questions';
import { TextField } from './fields';
import { Form } from './form';
import type { Problems } from './taking';
import { useEditing, type EditingOf } from './use-editing';
import { RefusalNotice } from './refusal-notice';

const none: Problems = new Map();

interface Props<T> extends Omit<EditingOf<T>, 'left'> {
  readonly label: string;
  readonly save?: string;
  /** Whether something recorded is corrected, so that a reason may be given. */
  readonly askWhy: boolean;
  readonly children: (text: T, set: (text: T) => void, problems: Problems) => ReactNode;
}

/** The form. */
export function EditForm<T>({ label, save = 'Save', askWhy, children, ...of }: Props<T>) {
  const editing = useEditing(of);
  const { typed, wrong, refused } = editing;
  if (typed === null) return <p className="soft">Opening…</p>;
  const { problems } = of.read(typed.text);
  return (
    <Form label={label} record={() => void editing.record()} leave={of.onDone} wrong={wrong} startHere>
      {editing.restored && <p className="notice">Unfinished entry restored. Go on where you stopped.</p>}
      {children(typed.text, editing.set, wrong > 0 ? problems : none)}
      {(askWhy || refused !== null || typed.why !== '') && <Why why={typed.why} onChange={editing.setWhy} />}
      <RefusalNotice words={refused} />
      <div className="row">
        <button type="submit" className="button primary">
          {save}
        </button>
        <button type="button" className="button quiet" onClick={() => void editing.drop().then(of.onDone)}>
          {askWhy ? 'Leave it as it was' : 'Cancel'}
        </button>
      </div>
      <EditQuestions editing={editing} />
    </Form>
  );
}

/** Why something recorded is corrected: asked, never demanded, unless what is refused without a reason is meant all the same. */
export function Why({ why, onChange }: { readonly why: string; readonly onChange: (why: string) => void }) {
  return (
    <TextField label="Why it is corrected, if you want to say" width="full" value={why} onChange={onChange} />
  );
}

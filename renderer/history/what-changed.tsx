// What an act changed, field by field.
import { daysInWords } from '../../core/lineage/labels';
import type { Entry } from './acts-by-day';

export function Changes({ entry }: { readonly entry: Entry }) {
  return (
    <ul className="changes">
      {entry.changes.map((change, at) => (
        <li key={at}>
          <span className="change-of">{change.label}</span>
          {change.field === null ? (
            <span>
              <span className="soft">{change.before === null ? 'added' : 'taken away'}</span>
              {(change.after ?? change.before) !== '' &&
                ` ${daysInWords(change.after ?? change.before ?? '')}`}
            </span>
          ) : (
            <span>
              {change.field}: <del>{daysInWords(change.before ?? 'unknown')}</del>{' '}
              <span aria-hidden="true">→</span>
              <span className="visually-hidden"> became </span>{' '}
              <ins>{daysInWords(change.after ?? 'unknown')}</ins>
            </span>
          )}
        </li>
      ))}
      {entry.moreChanges > 0 && <li className="soft">and {entry.moreChanges} more changes</li>}
    </ul>
  );
}

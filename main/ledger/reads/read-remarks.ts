// Remarks as replies have them, and the list of what nobody has answered.
import type { Parsed, RemarkReply, Reply } from '../../../core/contract';
import { remarksAbout, type Remarked } from '../derived/unread';
import type { Ledger } from '../ledger';

export const remarkReply = ({ uid, of, field, text, readAs, stops }: Remarked): RemarkReply => ({
  id: uid, of, field, text, readAs, stops,
}); // prettier-ignore

/** Jars named beside a remark that is about many. */
const NAMED = 3;

/** What is pressing comes first: what stops a jar, then what nobody has answered. */
const pressing = ({ stops, readAs }: Remarked): number => (stops ? 0 : readAs === null ? 1 : 2);

export function listRemarks(ledger: Ledger, input: Parsed<'remarks.list'>): Reply<'remarks.list'> {
  const { rows, index } = ledger;
  const jars = input.jar === null ? null : [rows.keyOf('jar', input.jar)];
  const found = new Map<number, { readonly remark: Remarked; readonly about: number[] }>();
  for (const [jar, remarks] of remarksAbout(rows, jars, true))
    for (const remark of remarks) {
      const known = found.get(remark.key);
      if (known) known.about.push(jar);
      else found.set(remark.key, { remark, about: [jar] });
    }
  const all = [...found.values()].toSorted(
    (a, b) => pressing(a.remark) - pressing(b.remark) || b.remark.key - a.remark.key,
  );
  const listed = input.unread ? all.filter(({ remark }) => remark.readAs === null) : all;
  return {
    remarks: listed.slice(0, input.limit).map(({ remark, about }) => ({
      ...remarkReply(remark),
      jars: about.slice(0, NAMED).map((jar) => ({ id: index.jar(jar).uid, label: index.jar(jar).label })),
      about: about.length,
    })),
    more: listed.length > input.limit,
    stopping: all.filter(({ remark }) => remark.stops).length,
    unread: all.filter(({ remark }) => remark.readAs === null).length,
  };
}

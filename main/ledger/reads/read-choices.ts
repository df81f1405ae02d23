// Choices of seed that were kept, newest first.
import { NextReply } from '../../../core/shapes/advice-replies';
import type { Parsed, Reply } from '../../../core/contract';
import { momentText } from '../../../core/ledger/stored-moments';
import type { Ledger } from '../ledger';
import { type Columns, fromColumns } from '../facts/tables';

/** @throws Refused 'not found' for a line this ledger does not have */
export function listChoices(
  ledger: Ledger,
  { line, limit }: Parsed<'advice.choices'>,
): Reply<'advice.choices'> {
  const { rows } = ledger;
  const of = rows.keyOrNull('batch', line);
  const found = rows
    .prepare(
      `SELECT c.*, r.uid, a.at AS act_at, a.at_off AS act_at_off, a.why AS act_why FROM choice c
         JOIN record r ON r.key = c.key JOIN act a ON a.key = r.made_in
        ${of === null ? '' : 'WHERE c.line = ?'} ORDER BY c.key DESC LIMIT ?`,
    )
    .all(...(of === null ? [limit] : [of, limit])) as Columns[];
  return {
    choices: found.map((columns) => {
      const choice = fromColumns('choice', columns);
      return {
        id: choice.uid,
        at: momentText(Number(columns.act_at), Number(columns.act_at_off)),
        why: columns.act_why === null ? null : String(columns.act_why),
        line: rows.uidOrNull('batch', choice.line),
        jar: rows.uidOrNull('jar', choice.jar),
        portion: rows.uidOrNull('portion', choice.portion),
        label: choice.label,
        place: choice.place,
        advice: NextReply.parse(JSON.parse(choice.advice)),
      };
    }),
  };
}

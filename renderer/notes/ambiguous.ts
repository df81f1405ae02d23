// A file that can be read in two ways is refused with the code 'ambiguous'. On the screen that is a question, not an error.
import type { Refusal } from '../../core/contract';
import type { Question } from './note-lists';

const texts = (value: Refusal['params'][string] | undefined): readonly string[] =>
  Array.isArray(value) ? value : [];

/**
 * The question in a refusal, or null where it is another refusal.
 * @param sentence the refusal's own sentence, shown where it names no question
 */
export function questionOf({ code, params }: Refusal, sentence: string): Question | null {
  if (code !== 'ambiguous' || typeof params['id'] !== 'string') return null;
  const labels = texts(params['labels']);
  return {
    id: params['id'],
    row: typeof params['row'] === 'number' ? params['row'] : null,
    sentence: typeof params['question'] === 'string' ? params['question'] : sentence,
    choices: texts(params['choices']).map((value, at) => ({ value, label: labels[at] ?? value })),
    blocks: true,
  };
}

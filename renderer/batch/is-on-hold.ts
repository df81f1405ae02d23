// Whether a jar is on hold because of a spoiled one, and no reason was written that lifts it. Pure.
import type { BatchReply } from '../../core/contract';

export const isOnHold = ({ cautions }: Pick<BatchReply['jars'][number], 'cautions'>): boolean =>
  cautions.some(({ how, cleared }) => !cleared && how.startsWith('on hold'));

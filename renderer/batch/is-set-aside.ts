// Whether a jar is set aside because of a spoiled one, and neither a reason nor two clean generations lifted it. Pure.
import type { BatchReply } from '../../core/contract';

export const isSetAside = ({ caution }: Pick<BatchReply['jars'][number], 'caution'>): boolean =>
  caution === 'set aside';

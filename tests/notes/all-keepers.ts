// Every invented sheet there is a truth for: what must hold of any of them is asked of all.
import { FRIENDS_KEEPERS } from './friends-keepers';
import { FURTHER_KEEPERS } from './further-keepers';
import { HABITS_KEEPERS } from './habits-keepers';
import { LATER_KEEPERS } from './later-keepers';
import { MORE_KEEPERS } from './more-keepers';
import { ODD_KEEPERS } from './odd-keepers';
import { OTHER_KEEPERS } from './other-keepers';
import { UNSEEN_KEEPERS } from './unseen-keepers';
import { VARIED, type Varied } from './varied';

export const ALL_KEEPERS: readonly Varied[] = [
  ...VARIED,
  ...OTHER_KEEPERS,
  ...ODD_KEEPERS,
  ...MORE_KEEPERS,
  ...FURTHER_KEEPERS,
  ...LATER_KEEPERS,
  ...UNSEEN_KEEPERS,
  ...FRIENDS_KEEPERS,
  ...HABITS_KEEPERS,
];

// What the native menu asks for, done here, so that errors and progress show in one place.
import type { JobName, MenuId } from '../../core/call-names';
import type { Input } from '../../core/contract';
import { isTyping, preferencesSwitch } from './actions';
import { showOut } from '../out/out-shown';
import { call, startJob } from '../state/ledger-calls';
import { currentState, go, redo, say, undo } from '../state/store';

async function run<N extends JobName>(name: N, input: Input<N>, done: string | null = null): Promise<void> {
  const answer = await startJob(name, input).done;
  if (!answer.ok) {
    // The keeper thought better of it: nothing to say.
    if (answer.error.code !== 'cancelled') say(answer.sentence, 'caution');
  } else if (done !== null) say(done, 'calm');
}

/** The ledger remembers the theme; main has changed the window's already. */
async function saveTheme(theme: 'system' | 'light' | 'dark'): Promise<void> {
  const state = currentState();
  if (state === null || state.ledger === null) return;
  const answer = await call('preferences.save', { ...state.preferences, theme });
  if (!answer.ok) say(answer.sentence, 'caution');
}

/** In a field these are the field's own, elsewhere the ledger's. */
function inFieldOr(command: 'undo' | 'redo', ledgers: () => Promise<void>): void {
  if (isTyping(document.activeElement)) document.execCommand(command);
  else void ledgers();
}

const inLedger = (work: () => void) => (): void => {
  if (currentState()?.ledger) work();
};
const onlyInLedger = (screen: string): (() => void) => inLedger(() => go(screen));

const DO: Record<MenuId, () => void> = {
  'ledger.open': () => void run('ledger.open', { file: null }),
  'ledger.create': () => void run('ledger.create', { file: null }),
  'ledger.backup': () => void run('ledger.backup', {}, 'Backed up.'),
  'ledger.openDemo': () => void run('ledger.openDemo', {}),
  'notes.bringIn': onlyInLedger('notes'),
  'ledger.fromArchive': () => void run('ledger.fromArchive', { archive: null, file: null }),
  out: inLedger(() => showOut({ panel: 'everything' })),
  backups: inLedger(() => showOut({ panel: 'backups' })),
  find: inLedger(() => showOut({ panel: 'find' })),
  reports: inLedger(() => showOut({ panel: 'reports' })),
  receive: inLedger(() => showOut({ panel: 'receive' })),
  undo: () => inFieldOr('undo', undo),
  redo: () => inFieldOr('redo', redo),
  preferences: () => {
    if (currentState()?.ledger) preferencesSwitch.toggle();
  },
  'screen.family': onlyInLedger('family'),
  'screen.batch': onlyInLedger('batch'),
  'screen.hold': onlyInLedger('hold'),
  'screen.shelf': onlyInLedger('shelf'),
  'screen.vigour': onlyInLedger('vigour'),
  'screen.trials': onlyInLedger('trials'),
  'screen.sources': onlyInLedger('sources'),
  'screen.costs': onlyInLedger('costs'),
  'screen.history': onlyInLedger('history'),
  'theme.system': () => void saveTheme('system'),
  'theme.light': () => void saveTheme('light'),
  'theme.dark': () => void saveTheme('dark'),
};

/** Changes which ledger is open; a refusal is said. */
export const changeLedger = (name: 'ledger.leaveDemo' | 'ledger.openDemo'): Promise<void> => run(name, {});

/** Listens to the menu, and to the system where it hands over a jar's file: that is shown once a ledger is open. */
export function listenToMain(): void {
  window.jarline.on.menu(({ id }) => DO[id as MenuId]?.());
  window.jarline.on.handed((file) => {
    showOut({ panel: 'receive', file });
    if (currentState()?.ledger === null)
      say(`${file.name} is shown as soon as a ledger of your own is open.`);
  });
}

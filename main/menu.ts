// The native menu. An item only names itself to the page, which does the rest and shows what comes of it.
import { Menu, type MenuItemConstructorOptions } from 'electron';
import type { MenuId } from '../core/call-names';

/** Builds and sets the menu. */
export function setMenu(choose: (id: MenuId) => void, theme: string, forDevelopers: boolean): void {
  const item = (id: MenuId, label: string, accelerator?: string): MenuItemConstructorOptions => ({
    id,
    label,
    click: () => choose(id),
    // Shown, and acted on by the page, which knows whether someone is typing in a field.
    ...(accelerator ? { accelerator, registerAccelerator: process.platform === 'darwin' } : {}),
  });
  const line: MenuItemConstructorOptions = { type: 'separator' };
  const themes = (['system', 'light', 'dark'] as const).map((name) => ({
    ...item(`theme.${name}`, { system: 'As the system', light: 'Light', dark: 'Dark' }[name]),
    type: 'radio' as const,
    checked: theme === name,
  }));
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      ...(process.platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
      {
        label: '&File',
        submenu: [
          item('ledger.open', 'Open a ledger…'),
          item('ledger.create', 'New ledger…'),
          item('notes.bringIn', 'Bring in a spreadsheet…', 'Alt+7'),
          item('receive', 'Receive a jar…'),
          item('find', 'Find a jar by its label…'),
          line,
          item('reports', 'Print, or save to be read elsewhere…'),
          item('out', 'Take everything out…'),
          item('ledger.fromArchive', 'Open an archive as a new ledger…'),
          line,
          item('ledger.backup', 'Back up now'),
          item('backups', 'Go back to a backup…'),
          item('ledger.openDemo', 'Look around with invented notes'),
          line,
          { role: 'quit', label: 'Quit' },
        ],
      },
      {
        label: '&Edit',
        submenu: [
          item('undo', 'Undo', 'CmdOrCtrl+Z'),
          item('redo', 'Redo', 'CmdOrCtrl+Shift+Z'),
          line,
          item('preferences', 'Preferences…', 'CmdOrCtrl+,'),
          line,
          { role: 'cut' },
          { role: 'copy' },
          { role: 'paste' },
          { role: 'selectAll' },
        ],
      },
      {
        label: '&View',
        submenu: [
          item('screen.family', 'Family', 'Alt+1'),
          item('screen.batch', 'Batch', 'Alt+2'),
          item('screen.hold', 'Warmth', 'Alt+8'),
          item('screen.shelf', 'Shelf', 'Alt+3'),
          item('screen.vigour', 'Vigour', 'Alt+4'),
          item('screen.trials', 'Trials', 'Alt+0'),
          item('screen.sources', 'Sources', 'Alt+5'),
          item('screen.costs', 'Costs', 'Alt+9'),
          item('screen.history', 'History', 'Alt+6'),
          line,
          { label: 'Theme', submenu: themes },
          { role: 'resetZoom' },
          { role: 'zoomIn' },
          { role: 'zoomOut' },
          { role: 'togglefullscreen' },
          ...(forDevelopers ? [line, { role: 'toggleDevTools' } as const] : []),
        ],
      },
    ]),
  );
}

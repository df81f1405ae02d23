// How the window is made: walled off from Node, in the colour of the theme from its first moment. Pure.
import type { BrowserWindowConstructorOptions } from 'electron';

/** The table's colour in each theme, as in the page's token sheet: a test holds them equal. */
export const PAPER = { light: '#f6f0e4', dark: '#1c2125' } as const;

/**
 * Options of the one window.
 * @param preload absolute path of the built preload
 */
export function windowOptions(dark: boolean, preload: string): BrowserWindowConstructorOptions {
  return {
    title: 'Jarline',
    width: 1280,
    height: 860,
    minWidth: 640,
    minHeight: 480,
    useContentSize: true,
    show: false,
    backgroundColor: dark ? PAPER.dark : PAPER.light,
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false, // Chromium would fetch its dictionaries from the network
    },
  };
}

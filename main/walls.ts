// What the page may not do: permissions, devices, navigation, new windows, web views, the network.
import type { App, Session, WebContents } from 'electron';
import { HOST, SCHEME } from './page-protocol';

/** Whether a URL belongs to the page. Parsed, never compared by its beginning. */
export function isOwnPage(url: string): boolean {
  if (!URL.canParse(url)) return false;
  const { protocol, host, username, password } = new URL(url);
  return protocol === `${SCHEME}:` && host === HOST && username === '' && password === '';
}

interface Frame {
  readonly url: string;
  readonly parent: unknown;
}

/** Whether a message comes from the page itself: its main frame, at its own address. */
export function isTrusted(frame: Frame | null | undefined): boolean {
  return frame !== null && frame !== undefined && frame.parent === null && isOwnPage(frame.url);
}

/** The one thing the page may ask for: putting a plot it was told to copy on the clipboard. It can't read there. */
const mayAsk = (permission: string, url: string | undefined): boolean =>
  permission === 'clipboard-sanitized-write' && url !== undefined && isOwnPage(url);

/** Refuses every device, every permission but writing to the clipboard, and every request that leaves the machine. */
export function closeSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer, details) =>
    answer(details.isMainFrame && mayAsk(permission, details.requestingUrl)),
  );
  session.setPermissionCheckHandler(
    (_contents, permission, _origin, details) =>
      details.isMainFrame && mayAsk(permission, details.requestingUrl),
  );
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest((details, answer) => {
    const cancel = !isOwnPage(details.url) && !details.url.startsWith('devtools:');
    // Said, so that none goes unseen: every test in the window fails on it.
    if (cancel)
      process.stderr.write(`jarline: refused a request that would leave: ${schemeAndHost(details.url)}\n`);
    answer({ cancel });
  });
}

/** Where a request would have gone, without what it would have told there. */
function schemeAndHost(url: string): string {
  if (!URL.canParse(url)) return 'an address that is none';
  const { protocol, host } = new URL(url);
  return `${protocol}//${host}`;
}

/** Keeps a page where it is. */
export function closeContents(contents: WebContents): void {
  for (const event of ['will-navigate', 'will-redirect', 'will-frame-navigate'] as const) {
    // One listener type for the three events, which all can be prevented.
    contents.on(event as 'will-navigate', (details) => details.preventDefault());
  }
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Before the program is ready: sandbox for every process, no name is ever resolved. */
export function closeApp(app: App): void {
  // As root the OS sandbox can't start; the window's own `sandbox: true` holds all the same.
  if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
  app.commandLine.appendSwitch('host-resolver-rules', 'MAP * ~NOTFOUND');
  app.commandLine.appendSwitch('disable-background-networking');
  app.on('web-contents-created', (_event, contents) => closeContents(contents));
}

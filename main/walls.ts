// What the page may not do: permissions, devices, navigation, new windows, web views, the network.
import type { App, Session, WebContents } from 'electron';
import { CameraPass } from './camera-pass';
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

interface Asking {
  readonly isMainFrame: boolean;
  readonly requestingUrl?: string;
}
const isPage = ({ isMainFrame, requestingUrl: url }: Asking): boolean =>
  isMainFrame && url !== undefined && isOwnPage(url);

/** What the page itself may always ask for: putting a plot it was told to copy on the clipboard. It can't read there. */
const mayAlways = (permission: string, asking: Asking): boolean =>
  permission === 'clipboard-sanitized-write' && isPage(asking);

/** The camera, and no microphone beside it. */
const onlyVideo = (details: object): boolean =>
  'mediaTypes' in details && Array.isArray(details.mediaTypes) && details.mediaTypes.join() === 'video';

/**
 * Refuses every device, every permission but writing to the clipboard, and every request that leaves the machine.
 * @param camera leave of the keeper to use the camera once: the request of the page uses it up
 */
export function closeSession(session: Session, camera = new CameraPass()): void {
  session.setPermissionRequestHandler((_contents, permission, answer, details) =>
    answer(
      mayAlways(permission, details) ||
        (permission === 'media' && isPage(details) && onlyVideo(details) && camera.take()),
    ),
  );
  session.setPermissionCheckHandler(
    (_contents, permission, _origin, details) =>
      mayAlways(permission, details) ||
      (permission === 'media' && isPage(details) && details.mediaType === 'video' && camera.stands),
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

// Prints a document of the program's own making in a window that nobody sees: no scripts, no network, nothing but that document.
import { BrowserWindow, session } from 'electron';
import { HOST, SCHEME } from './page-protocol';
import { closeSession } from './walls';

interface PageSize {
  readonly width: number;
  readonly height: number;
}

const POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";
const MM_PER_INCH = 25.4;

/** Opens the document, does something with it, and closes its window whatever happens. */
async function withDocument<T>(html: string, work: (window: BrowserWindow) => Promise<T>): Promise<T> {
  const apart = session.fromPartition('print', { cache: false });
  closeSession(apart);
  apart.protocol.handle(SCHEME, () =>
    new Response(html, { headers: { 'Content-Type': 'text/html; charset=utf-8', 'Content-Security-Policy': POLICY } })); // prettier-ignore
  const window = new BrowserWindow({
    show: false,
    webPreferences: {
      session: apart,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      javascript: false,
      spellcheck: false,
    },
  });
  try {
    await window.loadURL(`${SCHEME}://${HOST}/print.html`);
    return await work(window);
  } finally {
    window.destroy();
    apart.protocol.unhandle(SCHEME);
  }
}

/** The document as the bytes of a PDF with pages of that size (mm). */
export const pdfOf = (html: string, { width, height }: PageSize): Promise<Uint8Array> =>
  withDocument(html, ({ webContents }) =>
    webContents.printToPDF({
      pageSize: { width: width / MM_PER_INCH, height: height / MM_PER_INCH },
      margins: { top: 0, bottom: 0, left: 0, right: 0 },
      printBackground: true,
      preferCSSPageSize: true,
    }),
  );

/** The document on paper. @returns false where the keeper thought better of it */
export const onPaper = (html: string, { width, height }: PageSize): Promise<boolean> =>
  withDocument(
    html,
    ({ webContents }) =>
      new Promise((done) => {
        webContents.print(
          { pageSize: { width: width * 1000, height: height * 1000 }, margins: { marginType: 'none' } },
          (printed) => done(printed),
        );
      }),
  );

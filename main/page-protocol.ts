// Serves the page as app://jarline/…, and photographs of the open ledger; nothing else, and nothing from outside.
import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

export const SCHEME = 'app';
export const HOST = 'jarline';
export const PAGE = `${SCHEME}://${HOST}/index.html`;

/** What the page may do, sent with every reply. */
export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "object-src 'none'",
].join('; ');

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.woff2': 'font/woff2',
};

export type Place =
  | { readonly kind: 'page'; readonly path: string }
  | { readonly kind: 'photograph'; readonly file: string }
  | null;

/**
 * What a URL asks for, or null where it is to be refused. Works on the text as sent, so that nothing decoded later
 * can climb out: plain names and single slashes are all a path may hold.
 */
function placeOf(url: string): Place {
  const start = `${SCHEME}://${HOST}/`;
  if (!url.startsWith(start)) return null;
  const path = url.slice(start.length).split(/[?#]/, 1)[0] ?? '';
  const photograph = /^photograph\/([0-9a-f]{64}\.jpg)$/.exec(path)?.[1];
  if (photograph) return { kind: 'photograph', file: photograph };
  if (!/^[A-Za-z0-9_-][A-Za-z0-9._-]*(\/[A-Za-z0-9_-][A-Za-z0-9._-]*)*$/.test(path)) return null;
  return extname(path) in TYPES ? { kind: 'page', path } : null;
}

/** The file's bytes if it lies inside the folder, links followed; else null. */
async function readInside(folder: string, path: string): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    const root = await realpath(folder);
    const file = await realpath(join(root, path));
    return file.startsWith(root + sep) ? new Uint8Array(await readFile(file)) : null;
  } catch (error) {
    if (['ENOENT', 'ENOTDIR', 'EISDIR', 'ELOOP'].includes((error as NodeJS.ErrnoException).code ?? ''))
      return null;
    throw error;
  }
}

/**
 * Answers one request.
 * @param photographs folder of the open ledger's photographs, or null
 */
export async function serve(
  request: { readonly url: string; readonly method: string },
  pageFolder: string,
  photographs: string | null,
): Promise<Response> {
  const headers = {
    'Content-Security-Policy': CONTENT_POLICY,
    'X-Content-Type-Options': 'nosniff',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Referrer-Policy': 'no-referrer',
    'Cache-Control': 'no-cache',
  };
  const refuse = (status: number): Response => new Response(null, { status, headers });
  if (request.method !== 'GET') return refuse(405);
  const place = placeOf(request.url);
  if (place === null) return refuse(403);
  let bytes: Uint8Array<ArrayBuffer> | null = null;
  if (place.kind === 'page') bytes = await readInside(pageFolder, place.path);
  else if (photographs !== null) bytes = await readInside(photographs, place.file);
  if (bytes === null) return refuse(404);
  const name = place.kind === 'page' ? place.path : place.file;
  return new Response(bytes, { headers: { ...headers, 'Content-Type': TYPES[extname(name)] ?? '' } });
}

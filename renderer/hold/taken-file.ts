// A file that was chosen or dropped, as calls take it.
export interface Taken {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

const MOST = 20 * 1024 * 1024;

/** The file, or a sentence where it is too large. */
export async function taken(file: File): Promise<Taken | string> {
  if (file.size > MOST) return `${file.name} is larger than 20 MB. Export fewer days, and bring it in again.`;
  return { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
}

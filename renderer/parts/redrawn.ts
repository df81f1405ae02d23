// A picture drawn anew on white, so that nothing but the picture is in what comes out.

/** @returns its bytes; null where this machine can't draw it */
export async function redrawn(
  picture: CanvasImageSource,
  [width, height]: readonly [number, number],
  type: 'image/jpeg' | 'image/png',
  quality?: number,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const canvas = new OffscreenCanvas(Math.max(1, Math.round(width)), Math.max(1, Math.round(height)));
  const pen = canvas.getContext('2d');
  if (!pen) return null;
  // JPEG has no transparency: a see-through picture stands on white.
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  const blob = await canvas.convertToBlob({ type, ...(quality === undefined ? {} : { quality }) });
  return new Uint8Array(await blob.arrayBuffer());
}

// A thread of its own that looks for a square code in a picture: so a picture that takes long holds up nothing, and can be ended.
import jsQR from 'jsqr';

export interface CodeAsked {
  readonly pixels: Uint8ClampedArray<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
}

self.addEventListener('message', ({ data: { pixels, width, height } }: MessageEvent<CodeAsked>) =>
  self.postMessage(jsQR(pixels, width, height)?.data ?? null),
);

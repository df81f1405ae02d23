// A screen to draw on: says what is missing, or starts a virtual one for tests.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { Refused } from './places.mjs';

export const hasDisplay = () =>
  process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);

/** One sentence on what is missing for a window, or undefined. */
export function displayTrouble() {
  if (hasDisplay()) return undefined;
  return 'There is no display: neither DISPLAY nor WAYLAND_DISPLAY is set, so no window can open. Start it from a desktop, or with a virtual display: xvfb-run npm start';
}

/**
 * A display for this process and its children: the one there is, or a virtual one that picks a free number itself.
 * @returns {Promise<() => void>} ends what was started, nothing else
 */
export async function useDisplay() {
  if (hasDisplay()) return () => {};
  const flags = ['-displayfd', '3', '-screen', '0', '1920x1200x24', '-nolisten', 'tcp'];
  const xvfb = spawn('Xvfb', flags, { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
  const ended = Promise.race([once(xvfb, 'error'), once(xvfb, 'exit')]).then(() => {
    throw new Refused(
      'The virtual display Xvfb could not be started: install the package xvfb, or set DISPLAY.',
    );
  });
  const [number] = await Promise.race([once(xvfb.stdio[3], 'data'), ended]);
  ended.catch(() => {}); // it is ended on purpose below
  process.env.DISPLAY = `:${String(number).trim()}`;
  return () => {
    delete process.env.DISPLAY;
    xvfb.kill();
  };
}

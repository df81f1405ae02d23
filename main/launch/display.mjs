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

/** A virtual display that picks a free number itself. */
async function startDisplay() {
  const flags = ['-displayfd', '3', '-screen', '0', '1920x1200x24', '-nolisten', 'tcp'];
  const xvfb = spawn('Xvfb', flags, { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
  const ended = Promise.race([once(xvfb, 'error'), once(xvfb, 'exit')]).then(() => {
    throw new Refused(
      'The virtual display Xvfb could not be started: install the package xvfb, or set DISPLAY.',
    );
  });
  const [number] = await Promise.race([once(xvfb.stdio[3], 'data'), ended]);
  ended.catch(() => {}); // it is ended on purpose below
  return { name: `:${String(number).trim()}`, stop: () => xvfb.kill() };
}

/**
 * A display for this process and its children: the one there is, or a virtual one.
 * @returns {Promise<() => void>} ends what was started, nothing else
 */
export async function useDisplay() {
  const { stop } = await useDisplays(1);
  return stop;
}

/**
 * Displays for windows that are tried side by side: focus belongs to one window of a display. Where there is a display
 * already, that one alone.
 * @param {number} count
 * @returns {Promise<{ env: Record<string, string>, stop: () => void }>} what e2e/playwright.config.ts reads; `stop` ends
 *   what was started, nothing else
 */
export async function useDisplays(count) {
  if (hasDisplay()) return { env: {}, stop: () => {} };
  const displays = await Promise.all(Array.from({ length: count }, startDisplay));
  process.env.DISPLAY = displays[0].name;
  return {
    env: { JARLINE_DISPLAYS: displays.map(({ name }) => name).join(' ') },
    stop: () => {
      delete process.env.DISPLAY;
      for (const display of displays) display.stop();
    },
  };
}

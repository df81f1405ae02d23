// Every file that the tests make lies in one folder of the system's, which goes when they are over.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Run by vitest once, before its workers start: they inherit where temporary files go. @returns what is done at the end */
export default function useTemporaryFolder(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'jarline-tests-'));
  for (const name of ['TMPDIR', 'TEMP', 'TMP']) process.env[name] = folder;
  // Programs that tests start one after another are compiled once: that is a third of what a short one takes.
  process.env['NODE_COMPILE_CACHE'] = join(folder, 'compiled');
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}

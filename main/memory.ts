// What the program remembers between starts, outside any ledger: the last file, the theme, what was told. A small JSON file.
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';

const Memory = z.object({
  lastLedger: z.string().nullable().default(null),
  theme: z.enum(['system', 'light', 'dark']).default('system'),
  /** What the system was told of, by the ids of today's list. */
  told: z.array(z.string()).default([]),
});
export type Memory = z.infer<typeof Memory>;

/** What is remembered in the file. A missing or unreadable one counts as empty, and that is said on stderr. */
export function readMemory(file: string): Memory {
  const nothing = Memory.parse({});
  if (!existsSync(file)) return nothing;
  try {
    return Memory.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch (error) {
    process.stderr.write(`jarline: ${file} can't be read and is left out of account: ${String(error)}\n`);
    return nothing;
  }
}

/** Keeps it, whole or not at all. */
export function keepMemory(file: string, memory: Memory): void {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(`${file}.new`, `${JSON.stringify(memory, null, 2)}\n`);
  renameSync(`${file}.new`, file);
}

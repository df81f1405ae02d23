// Calls of the contract on the ledger that a command line names, one after another, through the handlers the window uses.
// The file is opened by the first call that needs it and stays open until `close`; `call` makes one call, `calls` many.
import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import { type CallName, contract, type Result } from '../core/contract';
import packageFile from '../package.json';
import { checkInput, checkReply } from './check-call';
import type { OpenMode, WorkerCall } from './ledger/worker-protocol';
import { Refused, refusalOf } from './refusal';
import { Session, unexpected } from './session';
import { localeOfSystem } from './locale';

/** What a call that was thrown out of amounts to: a refusal, or 'unexpected' with its stack on stderr. */
export function refusalFrom(error: unknown): Result<never> {
  const refused = refusalOf(error);
  if (refused) return { ok: false, error: refused.refusal };
  return { ok: false, error: { code: 'unexpected', params: { ref: unexpected(error) } } };
}

export class NamedLedger {
  readonly #file: string | null;
  #now: string | null;
  #session: Session | null = null;
  /** Whether anything was asked that may record. */
  #recorded = false;

  /**
   * @param file null where none was named: then only a call that names its own file is answered
   * @param now the moment the clock stands still at; null for the machine's clock
   */
  constructor(file: string | null, now: string | null) {
    this.#file = file;
    this.#now = now;
  }

  /** From here on the clock stands still at that moment. */
  setNow(moment: string): void {
    this.#now = moment;
    this.#session?.setNow(moment);
  }

  /** Opens the file now, if it is there. @returns why it can't be opened, or null */
  trouble(): Refused | null {
    if (this.#file === null) return new Refused('no ledger named');
    // An empty file is as good as none until something is recorded in it.
    if ((statSync(this.#file, { throwIfNoEntry: false })?.size ?? 0) === 0) return null;
    this.#session ??= this.#begin(this.#file, 'open');
    const { trouble } = this.#session;
    if (trouble) this.close();
    return trouble;
  }

  /** Answers one call. What it wrote is on the disk when this returns. Never throws. */
  answer(name: CallName, rawInput: unknown): Result<unknown> {
    try {
      return checkReply(name, this.#answer(name, rawInput));
    } catch (error) {
      return refusalFrom(error);
    }
  }

  #answer(name: CallName, rawInput: unknown): Result<unknown> {
    const checked = checkInput(name, rawInput);
    if (!checked.ok) return checked;
    const input: unknown = checked.value;
    const { file, mode } = this.#target(name, input);
    if (file === null) throw new Refused('no ledger named');
    if (name === 'ledger.leaveDemo' || name === 'ledger.fromArchive')
      throw new Refused('not from here', { name });
    const session = this.#session ?? this.#begin(file, mode);
    // A ledger that could not be opened is looked for again by the next call.
    this.#session = session.trouble ? null : session;
    if (contract[name].kind !== 'read') this.#recorded = true;
    return run(session, name, input);
  }

  /** Which file a call is about, and how that is to be opened. */
  #target(name: CallName, input: unknown): { file: string | null; mode: OpenMode } {
    const named = (input as { file?: string | null }).file;
    const file = this.#file;
    switch (name) {
      case 'ledger.open':
        return { file: named ? resolve(named) : file, mode: 'open' };
      case 'ledger.create':
        return { file: named ? resolve(named) : file, mode: 'create' };
      case 'ledger.openDemo':
        return { file, mode: 'demo' };
      case 'ledger.recover':
      case 'ledger.backup':
      case 'ledger.backups':
      case 'ledger.restore':
        return { file, mode: 'open' };
      default:
        // The first thing recorded makes the file; reading what is not there yet reads an empty ledger and makes nothing.
        return { file, mode: 'open or begin' };
    }
  }

  #begin(file: string, mode: OpenMode): Session {
    const ofSystem = (): Intl.ResolvedDateTimeFormatOptions => Intl.DateTimeFormat().resolvedOptions();
    return new Session({
      file,
      mode,
      now: this.#now,
      timeZone: ofSystem().timeZone,
      locale: localeOfSystem(process.platform, process.env, () => ofSystem().locale),
      version: packageFile.version,
    });
  }

  /** Closes the file in order. What keeps it from that is said on stderr: what was answered before is kept all the same. */
  close(): void {
    // A clock that was set is a test's or a picture's: there nothing happens by itself.
    if (this.#recorded && this.#now === null) this.#session?.backUpByItself();
    this.#session?.close();
    this.#session = null;
  }
}

function run(session: Session, name: CallName, input: unknown): Result<unknown> {
  if (name === 'ledger.open' || name === 'ledger.create' || name === 'ledger.openDemo') {
    void session.ledger; // why it could not be opened
    return session.answer('app.state', {});
  }
  return session.answer(name as WorkerCall, input, {
    look: () => undefined,
    step: (done, total, says) => {
      if (process.stderr.isTTY)
        process.stderr.write(`\r${says} ${done}${total === null ? '' : ` of ${total}`}   `);
    },
  });
}

// Leave to use the camera: given by the keeper, for one photograph, good for a few seconds and then gone. No electron here.

/** From the keeper's yes until the page asks the system for the camera (ms). */
const GOOD_FOR = 10_000;

export class CameraPass {
  readonly #clock: () => number;
  #until = -Infinity;

  /** @param clock milliseconds that only rise */
  constructor(clock: () => number = () => performance.now()) {
    this.#clock = clock;
  }

  /** The keeper said yes. */
  give(): void {
    this.#until = this.#clock() + GOOD_FOR;
  }

  /** Whether leave is there; looking takes nothing. */
  get stands(): boolean {
    return this.#clock() <= this.#until;
  }

  /** Uses it up. @returns whether there was leave */
  take(): boolean {
    const stood = this.stands;
    this.#until = -Infinity;
    return stood;
  }
}

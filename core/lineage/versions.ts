// Versions of a family share one set of columns. The columns stand as one version at a time; every other version holds
// the rows in which it differs from the version next to it on the way there. Asking a version puts its rows in and
// leaves those that stood there with the other, so that an act costs what it touches, not what the family holds.
import type { FamilyColumns, Row } from './counting';
import type { FamilySource } from './lineage-shapes';

type Rows = ReadonlyMap<number, Row>;

/** The version one step nearer to where the columns stand, and the rows in which it differs, as they are here. */
interface Away {
  readonly next: Version;
  readonly rows: Rows;
}

/** One version of the columns. What it answers never changes; where the columns stand is nobody else's matter. */
export class Version {
  readonly #shared: FamilyColumns;
  readonly #sources: ReadonlyMap<number, FamilySource>;
  /** null: the columns stand here. */
  #away: Away | null = null;

  constructor(shared: FamilyColumns) {
    this.#shared = shared;
    this.#sources = shared.sources;
  }

  /** The columns, standing as this version. Not to be held while another version is asked or made. */
  get columns(): FamilyColumns {
    if (this.#away) this.#stand();
    return this.#shared;
  }

  static #wayFrom(version: Version): Version[] {
    const way: Version[] = [];
    for (let at = version; at.#away; at = at.#away.next) way.push(at);
    return way;
  }

  /** Turns round the way from here to where the columns stand, from its far end. */
  #stand(): void {
    const way = Version.#wayFrom(this);
    for (const version of way.toReversed()) {
      const { next, rows } = version.#away as Away;
      next.#away = { next: version, rows: this.#shared.exchange(rows) };
      version.#away = null;
    }
    this.#shared.sources = this.#sources;
  }

  /**
   * Makes the next version. Where `write` throws, every row is put back and the columns stand here as before.
   * @param slots how many the next version has room for
   */
  changed<T>(
    slots: number,
    sources: ReadonlyMap<number, FamilySource>,
    write: (columns: FamilyColumns) => T,
  ): { readonly version: Version; readonly value: T } {
    const { columns } = this;
    columns.widen(slots);
    columns.sources = sources;
    const rows = (columns.kept = new Map<number, Row>());
    try {
      const value = write(columns);
      const version = new Version(columns);
      this.#away = { next: version, rows };
      return { version, value };
    } catch (error) {
      columns.exchange(rows);
      columns.sources = this.#sources;
      throw error;
    } finally {
      columns.kept = null;
    }
  }
}

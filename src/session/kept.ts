/** The database's part in keeping designs. */
export interface KeptStore {
  all(): Promise<{ id: string; value: unknown }[]>;
  /** Replaces what is kept under the id by what `change` makes of it, in one transaction. */
  change(id: string, change: (present: unknown) => unknown): Promise<void>;
  drop(id: string): Promise<void>;
}

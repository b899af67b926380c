/** What a call of the command ends with. */
export const EXIT = { clean: 0, faults: 1, unreadable: 2 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Where a call writes to. */
export interface Streams {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** True if `out` is a terminal. */
  readonly terminal: boolean;
}

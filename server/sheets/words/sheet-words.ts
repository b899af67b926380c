/** What a field sheet says in one language, apart from names and numbers. */
export interface SheetWords {
  /** How `Intl` writes its numbers and dates. */
  readonly locale: string;
  readonly title: string;
  /** Of the file; @param of what the sheet is of */
  readonly fileTitle: (of: string) => string;
  /** Clock times. */
  readonly span: (start: string, end: string) => string;
  readonly pageOf: (page: number, pages: number) => string;

  readonly count: string;
  readonly waterbody: string;
  readonly date: string;
  readonly section: string;
  readonly window: string;
  readonly from: string;
  readonly observer: string;
  readonly party: string;

  readonly beforeYouGo: string;
  readonly effortAndConditions: string;
  readonly began: string;
  readonly ended: string;
  readonly seen: string;
  readonly scope: string;
  /** To tick; behind one that ends with a colon there is a line to write on. */
  readonly scopes: readonly string[];
  readonly wind: string;
  readonly seaState: string;
  readonly ice: string;
  readonly visibility: string;
  readonly visibilities: readonly string[];
  readonly glare: string;
  readonly glares: readonly string[];
  readonly disturbance: string;
  readonly optics: string;

  readonly birds: string;
  /** What to write in the columns. */
  readonly keys: string;
  readonly columns: Readonly<
    Record<
      'code' | 'name' | 'number' | 'method' | 'time' | 'doing' | 'heading' | 'flock' | 'more',
      string
    >
  >;

  readonly rafts: string;
  readonly raftsIntro: string;
  readonly raft: (number: number) => string;
  readonly flockLabel: string;
  readonly birdsInAll: string;
  readonly countedBy: string;
  readonly identification: string;
  readonly sample: (number: number) => string;
}

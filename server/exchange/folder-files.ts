/** A file of a count folder, from disk or from an upload. */
export interface FolderFile {
  /** Its name in the folder, such as `count.json`. */
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** Files that a count folder may have; anything else in it is left alone. */
export const FOLDER_FILES = [
  'count.json',
  'places.geojson',
  'tallies.csv',
  'tallies.xlsx',
  'samples.csv',
  'marks.csv',
  'links.csv',
  'history.csv',
] as const;
export type FolderFileName = (typeof FOLDER_FILES)[number];

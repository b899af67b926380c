import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** The scenario's files as they lie on disk, read without the project's own reader. */
export const FOLDER = new URL('../../scenarios/lake-emberlow/', import.meta.url).pathname;

export const textOf = (file: string): string => readFileSync(`${FOLDER}${file}`, 'utf8');

const rows = (file: string): readonly Readonly<Record<string, string>>[] =>
  parse(textOf(file), { columns: true });

export type Ring = readonly (readonly [number, number])[];

interface Feature {
  readonly properties: Readonly<Record<string, string>>;
  readonly geometry:
    | { readonly type: 'Polygon'; readonly coordinates: readonly Ring[] }
    | { readonly type: 'Point'; readonly coordinates: readonly [number, number] };
}

export interface Truth {
  readonly total: Readonly<Record<string, number>>;
  readonly sections: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly flyingThrough: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly links: readonly {
    readonly kind: 'overlap' | 'movement';
    readonly lines: readonly [string, string];
  }[];
}

export const TALLIES = rows('tallies.csv');
export const KNOWN_LINKS = rows('links.csv');
export const TRUTH = JSON.parse(textOf('truth.json')) as Truth;
export const COUNT = JSON.parse(textOf('count.json')) as {
  readonly windows: readonly { readonly start: string; readonly end: string }[];
  readonly people: readonly { readonly id: string; readonly roles: readonly string[] }[];
};
export const DEMO = JSON.parse(textOf('demo.json')) as {
  readonly leaveOut: readonly string[];
  readonly leader: string;
  readonly compiler: string;
  readonly observer: string;
};

const PLACES = JSON.parse(textOf('places.geojson')) as { readonly features: readonly Feature[] };

/** Outside rings by the feature's id (or, for a view, its vantage point). */
export function ringsOf(kind: 'section' | 'view'): ReadonlyMap<string, Ring> {
  return new Map(
    PLACES.features.flatMap(({ properties, geometry }) => {
      const name = properties[kind === 'view' ? 'vantage' : 'id'];
      const ring = geometry.type === 'Polygon' ? geometry.coordinates[0] : undefined;
      return properties['kind'] === kind && name !== undefined && ring !== undefined
        ? [[name, ring] as const]
        : [];
    }),
  );
}

export function vantages(): ReadonlyMap<string, readonly [number, number]> {
  return new Map(
    PLACES.features.flatMap(({ properties, geometry }) =>
      properties['kind'] === 'vantage' && geometry.type === 'Point'
        ? [[properties['id'] ?? '', geometry.coordinates] as const]
        : [],
    ),
  );
}

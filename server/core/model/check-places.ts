import { uniqueId } from './check-plan.js';
import type { Fault } from './fault.js';
import { checkPoint, checkPolygon, checkShore } from './check-geometry.js';
import { isObject, KeyReader } from './key-reader.js';
import type { RawDocument } from './raw.js';
import { oneOf, readKnownId } from './reading.js';
import type { Section, ShorePart, VantagePoint, View } from './snapshot.js';
import { say } from './saying.js';

export interface CheckedPlaces {
  readonly sections: readonly Section[];
  readonly vantages: readonly VantagePoint[];
  readonly views: readonly View[];
  readonly shoreline: readonly ShorePart[];
  /** `null` if the collection could not be read. */
  readonly sectionIds: readonly string[] | null;
  readonly vantageIds: readonly string[] | null;
}

const KINDS = ['section', 'vantage', 'view', 'shoreline'] as const;

/** Checks `places.geojson` (RFC 7946). The values count only if no fault was added. */
export function checkPlaces(document: RawDocument, faults: Fault[]): CheckedPlaces {
  const nothing = {
    sections: [],
    vantages: [],
    views: [],
    shoreline: [],
    sectionIds: null,
    vantageIds: null,
  };
  if (document.value === undefined) return nothing;
  const value = isObject(document.value) ? document.value : {};
  const reader = new KeyReader(document.file, '', value, faults);
  const collection = 'FeatureCollection';
  const isCollection = reader.word('type', [collection], say('GeoJSON collection')) === collection;
  const features = isCollection ? reader.objects('features', say('a list of features')) : null;
  if (features === null) return nothing;
  const sections: Section[] = [];
  const vantages: VantagePoint[] = [];
  const views: { readonly view: View; readonly properties: KeyReader }[] = [];
  const shoreline: ShorePart[] = [];
  const ids = { section: new Map<string, string>(), vantage: new Map<string, string>() };
  for (const feature of features) {
    feature.word('type', ['Feature'], say('GeoJSON feature'));
    const properties = feature.child(
      'properties',
      say('kind ({kinds}) and id', { kinds: oneOf(KINDS) }),
    );
    const kind = properties?.word('kind', KINDS, say('kind of place'));
    if (properties === null || kind === null || kind === undefined) continue;
    if (kind === 'vantage') {
      const id = uniqueId(properties, ids.vantage);
      const name = properties.text('name', say('a name'), false) ?? id;
      vantages.push({ id, name, position: checkPoint(feature) });
    } else if (kind === 'section') {
      const id = uniqueId(properties, ids.section);
      const name = properties.text('name', say('a name'), false) ?? id;
      sections.push({ id, name, polygon: checkPolygon(feature) });
    } else if (kind === 'shoreline') {
      shoreline.push(...checkShore(feature));
    } else {
      const vantage = properties.text('vantage', say('the id of a vantage point')) ?? '';
      views.push({ view: { vantage, polygon: checkPolygon(feature) }, properties });
    }
  }
  const vantageIds = [...ids.vantage.keys()];
  for (const { view, properties } of views) {
    if (view.vantage === '') continue;
    const known = readKnownId(view.vantage, vantageIds, say('vantage point'));
    if (known.ok) continue;
    properties.fault('vantage', known.code, known.problem, known.expected, known.nearest);
  }
  if (sections.length === 0) {
    reader.fault(
      'features',
      'missing-value',
      say('there is no section'),
      say('at least one section'),
    );
  }
  return {
    sections: sections.sort((a, b) => (a.id < b.id ? -1 : 1)),
    vantages: vantages.sort((a, b) => (a.id < b.id ? -1 : 1)),
    views: sortedBy(
      views.map(({ view }) => view),
      ({ vantage, polygon }) => `${vantage}\n${JSON.stringify(polygon)}`,
    ),
    shoreline: sortedBy(shoreline, (part) => JSON.stringify(part)),
    sectionIds: [...ids.section.keys()],
    vantageIds,
  };
}

/** Views and parts of the shore have no id: they are in the order of their text. */
function sortedBy<Place>(places: readonly Place[], text: (place: Place) => string): Place[] {
  return places
    .map((place) => ({ place, key: text(place) }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .map(({ place }) => place);
}

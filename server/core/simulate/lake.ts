import type {
  CountWindow,
  Polygon,
  Position,
  Section,
  VantagePoint,
  View,
} from '../model/snapshot.js';
import { SECTION_DEPTH, SECTION_WIDTH, VIEW_BEYOND } from './model.js';
import type { SeenPart } from './turn.js';

/** Kilometres east and north of the lake's south-west corner. */
export interface Place {
  readonly east: number;
  readonly north: number;
}

/** In the open ocean, so that nobody takes the lake for a real one. */
const WEST = -40;
const SOUTH = 47;
/** Of WGS 84 at 47° N; that they change a little over the lake does not matter here. */
const KM_PER_DEGREE_EAST = 76.06;
const KM_PER_DEGREE_NORTH = 111.17;

export const WINDOW: CountWindow = {
  id: 'w1',
  start: '2027-01-16T08:00:00-05:00',
  end: '2027-01-16T11:00:00-05:00',
  slackMinutes: 10,
};
export const WINDOW_HOURS = 3;

/** Whole minutes from the start of the window as RFC 3339. */
export function clockAt(minutes: number): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `2027-01-16T${two(8 + Math.floor(minutes / 60))}:${two(minutes % 60)}:00-05:00`;
}

/** As a note in the field would have it: five decimals, about a metre. */
export function positionOf({ east, north }: Place): Position {
  const decimals = (value: number): number => Math.round(value * 1e5) / 1e5;
  return [
    decimals(WEST + east / KM_PER_DEGREE_EAST),
    decimals(SOUTH + north / KM_PER_DEGREE_NORTH),
  ];
}

/** A row of sections along the lake, numbered from the west. */
export class Lake {
  constructor(private readonly count: number) {}

  get width(): number {
    return this.count * SECTION_WIDTH;
  }

  /** Pulls a place back to the water. */
  onWater({ east, north }: Place): Place {
    return {
      east: Math.min(this.width - 1e-6, Math.max(0, east)),
      north: Math.min(SECTION_DEPTH, Math.max(0, north)),
    };
  }

  /** Section number, from 0. */
  sectionAt(place: Place): number {
    return Math.floor(this.onWater(place).east / SECTION_WIDTH);
  }

  /** Where one stands to count neighbouring sections: in the middle of their shore. */
  vantageOf(sections: readonly number[]): Place {
    const [west, east] = edgesOf(sections);
    return { east: (west + east) / 2, north: 0 };
  }

  /** Whether a place lies in the field of view from there. */
  isInView(place: Place, sections: readonly number[]): boolean {
    const [west, east] = this.reachOf(sections);
    return place.east >= west && place.east <= east;
  }

  /** Whether a place lies in what is seen where only a part is. */
  isInPart(place: Place, sections: readonly number[], { share, from }: SeenPart): boolean {
    const [west, east] = edgesOf(sections);
    const seen = share * (east - west);
    return from === 'west' ? place.east <= west + seen : place.east >= east - seen;
  }

  sections(): Section[] {
    return this.each((section) => ({
      id: sectionId(section),
      name: `Section ${section + 1}`,
      polygon: box(section * SECTION_WIDTH, (section + 1) * SECTION_WIDTH),
    }));
  }

  /** One for every section, and for every sections that are tallied as one. */
  vantages(merged: readonly (readonly number[])[]): VantagePoint[] {
    return this.stands(merged).map((sections) => ({
      id: vantageId(sections),
      name:
        sections.length === 1
          ? `Shore of section ${sections.map((section) => section + 1).join('')}`
          : `Shore of sections ${sections.map((section) => section + 1).join(' and ')}`,
      position: positionOf(this.vantageOf(sections)),
    }));
  }

  views(merged: readonly (readonly number[])[]): View[] {
    return this.stands(merged).map((sections) => ({
      vantage: vantageId(sections),
      polygon: box(...this.reachOf(sections)),
    }));
  }

  /** Sorted by id, as a checked count is. */
  private stands(merged: readonly (readonly number[])[]): (readonly number[])[] {
    return [...this.each((section) => [section]), ...merged].sort((one, other) =>
      vantageId(one) < vantageId(other) ? -1 : 1,
    );
  }

  private reachOf(sections: readonly number[]): [west: number, east: number] {
    const [west, east] = edgesOf(sections);
    return [Math.max(0, west - VIEW_BEYOND), Math.min(this.width, east + VIEW_BEYOND)];
  }

  /** Sorted by id, as a checked count is. */
  private each<Thing>(make: (section: number) => Thing): Thing[] {
    return Array.from({ length: this.count }, (_, section) => section)
      .sort((one, other) => (sectionId(one) < sectionId(other) ? -1 : 1))
      .map(make);
  }
}

export function sectionId(section: number): string {
  return `s${section + 1}`;
}

export function vantageId(sections: readonly number[]): string {
  return `v${sections.map((section) => section + 1).join('-')}`;
}

function edgesOf(sections: readonly number[]): [west: number, east: number] {
  return [Math.min(...sections) * SECTION_WIDTH, (Math.max(...sections) + 1) * SECTION_WIDTH];
}

function box(west: number, east: number): Polygon {
  const at = (x: number, y: number): Position => positionOf({ east: x, north: y });
  return [
    [at(west, 0), at(east, 0), at(east, SECTION_DEPTH), at(west, SECTION_DEPTH), at(west, 0)],
  ];
}

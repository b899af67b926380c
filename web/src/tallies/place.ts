import type { Polygon, Position } from '../../../server/core/model/snapshot.js';
import type { Assignment, OwnPart } from './own-part.js';

/** What an assignment looks like on a map: its sections, and where the observer stands. */
export interface Place {
  readonly sections: readonly {
    readonly id: string;
    readonly name: string;
    readonly polygon: Polygon;
  }[];
  readonly vantage: {
    readonly name: string;
    readonly position: Position;
    readonly views: readonly Polygon[];
  } | null;
}

export function placeOf(assignment: Assignment, count: OwnPart): Place {
  const own = new Set(assignment.sections.map(({ id }) => id));
  const vantage = count.vantages.find(({ id }) => id === assignment.vantage?.id);
  return {
    sections: count.sections
      .filter(({ id }) => own.has(id))
      .map(({ id, name, polygon }) => ({ id, name, polygon: polygonOf(polygon) })),
    vantage:
      vantage === undefined
        ? null
        : {
            name: vantage.name,
            position: positionOf(vantage.position),
            views: vantage.views.map(polygonOf),
          },
  };
}

/** GraphQL knows lists of numbers only. */
function polygonOf(rings: readonly (readonly (readonly number[])[])[]): Polygon {
  return rings.map((ring) => ring.map(positionOf));
}

function positionOf([lon = 0, lat = 0]: readonly number[]): Position {
  return [lon, lat];
}

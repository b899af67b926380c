import type * as Api from '../api/generated/schema.js';
import type { CountWindow, Section, VantagePoint } from '../core/model/snapshot.js';
import type { CountRecord } from '../database/count-record.js';
import { nameOf } from './count-access.js';

const rings = (polygon: Section['polygon']): number[][][] =>
  polygon.map((ring) => ring.map((position) => [...position]));

export function sectionView(section: Section): Api.Section {
  return { id: section.id, name: section.name, polygon: rings(section.polygon) };
}

/** The sections of these ids, in the order of the ids. */
export function sectionViews(record: CountRecord, ids: readonly string[]): Api.Section[] {
  return ids.map((id) => sectionView(found(record.sections, id)));
}

export function windowView(record: CountRecord, id: string): Api.Window {
  const window: CountWindow = found(record.windows, id);
  return { ...window, closed: record.closedWindows.has(id) };
}

export function vantageView(record: CountRecord, vantage: VantagePoint): Api.VantagePoint {
  const views = record.views.filter((view) => view.vantage === vantage.id);
  return {
    id: vantage.id,
    name: vantage.name,
    position: [...vantage.position],
    views: views.map(({ polygon }) => rings(polygon)),
  };
}

/** `null` stays `null`. */
export function vantageViewOf(record: CountRecord, id: string | null): Api.VantagePoint | null {
  return id === null ? null : vantageView(record, found(record.vantages, id));
}

export function shorelineView({ shoreline }: CountRecord): Api.ShorePart[] {
  return shoreline.map(({ form, lines }) => ({ isArea: form === 'area', lines: rings(lines) }));
}

export function personView(record: CountRecord, id: string): Api.Person {
  return { id, name: nameOf(record, id) };
}

export function protocolView(record: CountRecord): Api.Protocol {
  const { protocol } = record;
  return {
    rule: protocol.rule,
    zeros: protocol.zeros,
    resolution: protocol.resolution,
    windows: protocol.windows,
    questionedAt: protocol.questionedAt,
    seriousAt: protocol.seriousAt,
    linkThreshold: protocol.linkThreshold,
    deductLinks: protocol.deductLinks,
    signOffs: protocol.signOffs.map((role) => role.toUpperCase() as Api.Role),
  };
}

function found<Noun extends { readonly id: string }>(nouns: readonly Noun[], id: string): Noun {
  const noun = nouns.find((one) => one.id === id);
  if (noun === undefined) throw new Error(`a row names ${id}, which is not in its count`);
  return noun;
}

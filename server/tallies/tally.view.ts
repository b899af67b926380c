import type * as Api from '../api/generated/schema.js';
import { numberOf } from '../core/model/quantity.js';
import type { NotedMark, TallyLine } from '../core/model/snapshot.js';
import { scopeText } from '../core/taxa/scope.js';
import { taxonName } from '../core/taxa/taxon-name.js';
import type { CountRecord } from '../database/count-record.js';
import type { TallyVersion } from '../database/tally-rows.js';
import { personView, sectionViews, vantageViewOf, windowView } from '../plans/plan.view.js';

export function tallyView(record: CountRecord, tally: TallyVersion): Api.Tally {
  return {
    id: tally.id,
    observer: personView(record, tally.observer),
    party: tally.party.map((person) => personView(record, person)),
    sections: sectionViews(record, tally.sections),
    window: windowView(record, tally.window),
    vantage: vantageViewOf(record, tally.vantage),
    start: tally.start,
    end: tally.end,
    scope: scopeText(tally.scope),
    coverage: tally.coverage,
    seenArea: tally.seenArea?.map((ring) => ring.map((position) => [...position])) ?? null,
    conditions: tally.conditions ?? null,
    submittedAt: tally.submittedAt,
    version: tally.version,
    replaces: tally.replaces,
    reason: tally.reason,
    total: tally.lines.reduce((sum, { quantity }) => sum + (numberOf(quantity) ?? 0), 0),
    lines: tally.lines.map((line) => tallyLineView(line, tally.marks)),
    samples: tally.samples.map(({ raft, sample, candidates, number }) => ({
      raft,
      sample,
      taxon: taxonName(candidates),
      number,
    })),
  };
}

function tallyLineView(line: TallyLine, marks: readonly NotedMark[]): Api.TallyLine {
  const { quantity } = line;
  const isRange = quantity.kind === 'range' || quantity.kind === 'exact-with-range';
  const isExact = quantity.kind === 'exact' || quantity.kind === 'exact-with-range';
  return {
    id: line.id,
    written: line.written,
    taxon: taxonName(line.candidates),
    candidates: [...line.candidates],
    number: isExact ? quantity.number : null,
    low: isRange ? quantity.low : null,
    high: isRange ? quantity.high : null,
    present: quantity.kind === 'present',
    method: line.method,
    totalMethod: line.totalMethod ?? null,
    block: line.block,
    male: line.male,
    female: line.female,
    adult: line.adult,
    immature: line.immature,
    activity: line.activity,
    time: line.time,
    lon: line.position?.[0] ?? null,
    lat: line.position?.[1] ?? null,
    flock: line.flock,
    heading: line.heading,
    from: line.from,
    to: line.to,
    certainty: line.certainty,
    note: line.note,
    marks: marks
      .filter((each) => each.line === line.id)
      .map(({ mark, state }) => ({ mark, state })),
  };
}

import type { OwnTallyFragment, TallyInput, TallyLineInput } from '../graphql/generated/graphql.js';
import { v7 } from 'uuid';
import type { Activity, Method } from '../../../server/core/model/snapshot.js';
import { ACTIVITIES, METHODS, TOTAL_METHODS } from '../../../server/core/model/snapshot.js';
import {
  noConditions,
  wholeNumber,
  type Draft,
  type DraftConditions,
  type DraftLine,
} from './draft.js';
import type { NotedConditions } from '../ui/conditions-words.js';
import { clockTimeOf, instantNear } from './local-time.js';
import { marksInForce } from './marks-seen.js';
import { raftsOf, samplesOf } from './raft-input.js';

/** What of an assignment a tally needs; its section and window are fixed by it. */
export interface TallyFrame {
  readonly sectionIds: readonly string[];
  readonly window: { readonly id: string; readonly start: string; readonly end: string };
  readonly vantageId: string | null;
  readonly timeZone: string;
}

/** The draft as it is sent. The same draft always gives the same bytes, so that it can be sent again. */
export function tallyInput(draft: Draft, frame: TallyFrame): TallyInput {
  const when = (clockTime: string): string | null =>
    clockTime.trim() === '' ? null : instantNear(clockTime, frame.window, frame.timeZone);
  return {
    id: draft.id,
    countId: draft.countId,
    sectionIds: [...frame.sectionIds],
    windowId: frame.window.id,
    vantageId: frame.vantageId,
    partyIds: [...draft.party].sort(),
    start: when(draft.start),
    end: when(draft.end),
    scope: draft.scope === 'taxa' ? draft.scopeTaxa.join(', ') : draft.scope,
    coverage: draft.seenAll ? 1 : Number(draft.seenPercent) / 100,
    seenArea: seenAreaInput(draft),
    conditions: conditionsInput(draft.conditions),
    replaces: draft.replaces,
    reason: draft.replaces === null ? null : draft.reason.trim(),
    lines: draft.lines.map((line) => lineInput(line, when)),
    samples: draft.rafts.flatMap((raft) => samplesOf(raft)),
  };
}

/** The outline that was drawn, closed; `null` where there is none, or all of the section was seen. */
function seenAreaInput({ seenAll, seenArea }: Draft): TallyInput['seenArea'] {
  const [first] = seenArea;
  if (seenAll || first === undefined || seenArea.length < 3) return null;
  return [[...seenArea, first].map((corner) => [...corner])];
}

/** Corners of an outline that was sent, without the last, which is the first again. */
function cornersOf(rings: OwnTallyFragment['seenArea']): Draft['seenArea'] {
  return (rings?.[0] ?? []).slice(0, -1).map(([lon = 0, lat = 0]) => [lon, lat]);
}

/** `null` where nothing was noted. */
export function conditionsInput(conditions: DraftConditions): NotedConditions | null {
  const input: NotedConditions = {
    visibility: orNull(conditions.visibility),
    beaufort: wholeNumber(conditions.beaufort),
    seaState: wholeNumber(conditions.seaState),
    iceCover: share(conditions.iceCover),
    glare: orNull(conditions.glare),
    disturbance: orNull(conditions.disturbance),
    optics: orNull(conditions.optics),
  };
  return Object.values(input).some((noted) => noted !== null) ? input : null;
}

/** Per cent as typed → 0 to 1. */
function share(percent: string): number | null {
  return percent.trim() === '' ? null : Number(percent.replace(',', '.')) / 100;
}

function lineInput(line: DraftLine, when: (clockTime: string) => string | null): TallyLineInput {
  // A number may carry a range too: the observer's best number and the span around it.
  const hasRange = line.quantity !== 'present';
  return {
    id: line.id,
    taxon: line.taxon,
    number: line.quantity === 'number' ? wholeNumber(line.number) : null,
    low: hasRange ? wholeNumber(line.low) : null,
    high: hasRange ? wholeNumber(line.high) : null,
    method: line.method,
    ...countedAs(line),
    male: wholeNumber(line.male),
    female: wholeNumber(line.female),
    adult: wholeNumber(line.adult),
    immature: wholeNumber(line.immature),
    activity: line.activity,
    time: when(line.time),
    lon: degrees(line.lon),
    lat: degrees(line.lat),
    flock: orNull(line.flock),
    heading: degrees(line.heading),
    from: orNull(line.from),
    to: orNull(line.to),
    certainty: line.certainty,
    note: orNull(line.note),
    marks: marksInForce(line).map(({ mark, state }) => ({ mark, state })),
  };
}

/** Of a raft's line the whole raft was counted so; another line was itself. */
function countedAs(line: DraftLine): Pick<TallyLineInput, 'totalMethod' | 'block'> {
  const totalMethod = line.method === 'sample' && line.totalMethod !== '' ? line.totalMethod : null;
  const isInBlocks = (totalMethod ?? line.method) === 'block';
  return { totalMethod, block: isInBlocks ? wholeNumber(line.block) : null };
}

function degrees(text: string): number | null {
  return text.trim() === '' ? null : Number(text);
}

function orNull(text: string): string | null {
  return text.trim() === '' ? null : text.trim();
}

function conditionsOf({ conditions }: OwnTallyFragment): DraftConditions {
  if (conditions === null) return noConditions;
  const text = (value: number | null): string => (value === null ? '' : String(value));
  const { iceCover } = conditions;
  return {
    visibility: conditions.visibility ?? '',
    beaufort: text(conditions.beaufort),
    seaState: text(conditions.seaState),
    iceCover: text(iceCover === null ? null : Math.round(iceCover * 1000) / 10),
    glare: conditions.glare ?? '',
    disturbance: conditions.disturbance ?? '',
    optics: conditions.optics ?? '',
  };
}

/** A draft that corrects a submitted tally: new ids, everything else as it was sent. */
export function correctionOf(
  tally: OwnTallyFragment,
  ids: {
    readonly countId: string;
    readonly assignmentId: string;
    readonly timeZone: string;
    readonly observerId: string;
  },
): Draft {
  const clock = (instant: string | null): string =>
    instant === null ? '' : clockTimeOf(instant, ids.timeZone);
  const isKnownScope = tally.scope === 'all-waterbirds' || tally.scope === 'waterfowl';
  return {
    id: v7(),
    assignmentId: ids.assignmentId,
    countId: ids.countId,
    start: clock(tally.start),
    end: clock(tally.end),
    scope: tally.scope === 'waterfowl' ? 'waterfowl' : isKnownScope ? 'all-waterbirds' : 'taxa',
    scopeTaxa: isKnownScope ? [] : tally.scope.split(',').map((name) => name.trim()),
    seenAll: tally.coverage >= 1,
    seenArea: cornersOf(tally.seenArea),
    conditions: conditionsOf(tally),
    seenPercent: tally.coverage >= 1 ? '' : String(Math.round(tally.coverage * 1000) / 10),
    party: tally.party.map(({ id }) => id).filter((id) => id !== ids.observerId),
    replaces: tally.id,
    reason: '',
    lines: tally.lines.map((line) => {
      const text = (value: number | null): string => (value === null ? '' : String(value));
      const isRange = line.number === null;
      return {
        id: v7(),
        taxon: line.written,
        quantity: line.present ? 'present' : isRange ? 'range' : 'number',
        number: text(line.number),
        low: text(line.low),
        high: text(line.high),
        method: METHODS.find((one): one is Method => one === line.method) ?? 'one-by-one',
        totalMethod: TOTAL_METHODS.find((one) => one === line.totalMethod) ?? '',
        block: text(line.block),
        activity: ACTIVITIES.find((one): one is Activity => one === line.activity) ?? 'water',
        male: text(line.male),
        female: text(line.female),
        adult: text(line.adult),
        immature: text(line.immature),
        flock: line.flock ?? '',
        time: clock(line.time),
        heading: text(line.heading),
        from: line.from ?? '',
        to: line.to ?? '',
        certainty: line.certainty === 'likely' ? 'likely' : 'sure',
        note: line.note ?? '',
        lon: text(line.lon),
        lat: text(line.lat),
        marks: line.marks.map(({ mark, state }) => ({ mark, state })),
        // Asked about before it was submitted.
        marksAnswered: line.marks.length > 0,
      };
    }),
    rafts: raftsOf(tally),
  };
}

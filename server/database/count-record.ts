import type { Protocol } from '../core/model/protocol.js';
import type {
  CountWindow,
  EarlierNumber,
  NotedMark,
  Person,
  Polygon,
  Position,
  Role,
  ScanSample,
  Section,
  ShorePart,
  VantagePoint,
  View,
} from '../core/model/snapshot.js';
import type { Source } from './source.js';
import { tallyHeader, type TallyHeader } from './tally-rows.js';

interface Participant {
  readonly person: { readonly id: string; readonly name: string };
  readonly roles: readonly Role[];
  readonly hasJoined: boolean;
}

export interface Assignment {
  readonly id: string;
  readonly person: string;
  /** Section ids, sorted. */
  readonly sections: readonly string[];
  readonly window: string;
  readonly vantage: string | null;
  readonly contentHash: string;
}

interface SignOffRecord {
  readonly by: string;
  readonly role: 'leader' | 'compiler';
  readonly at: string;
  readonly inputHash: string;
}

export interface SealRecord {
  readonly id: string;
  readonly by: string;
  readonly at: string;
  readonly inputHash: string;
  readonly resultHash: string;
  readonly auditRoot: string;
  readonly auditSize: number;
}

/** All of a count but its tally lines, rulings and queries: what deciding who may do what needs. */
export interface CountRecord {
  readonly id: string;
  readonly name: string;
  readonly waterbody: string;
  readonly date: string;
  readonly timeZone: string;
  readonly protocol: Protocol;
  readonly contentHash: string;
  readonly history: readonly EarlierNumber[];
  readonly samples: readonly ScanSample[];
  readonly marks: readonly NotedMark[];
  readonly shoreline: readonly ShorePart[];
  readonly plannedAt: string;
  readonly windows: readonly CountWindow[];
  readonly closedWindows: ReadonlySet<string>;
  readonly sections: readonly Section[];
  readonly vantages: readonly VantagePoint[];
  readonly views: readonly View[];
  readonly participants: readonly Participant[];
  readonly assignments: readonly Assignment[];
  /** Every version of every tally. */
  readonly tallies: readonly TallyHeader[];
  readonly signOffs: readonly SignOffRecord[];
  readonly seal: SealRecord | null;
}

/** The participants as the core knows them. */
export function peopleOf({ participants }: CountRecord): readonly Person[] {
  return participants.map(({ person, roles }) => ({ ...person, roles }));
}

/** @returns the count, its lists sorted by id; null if there is none of this id */
export async function loadCount(source: Source, countId: string): Promise<CountRecord | null> {
  const row = await source.count.findUnique({
    where: { id: countId },
    include: {
      windows: { include: { closing: true, assignments: true }, orderBy: { id: 'asc' } },
      sections: { orderBy: { id: 'asc' } },
      vantages: { orderBy: { id: 'asc' } },
      views: { orderBy: { position: 'asc' } },
      people: {
        include: { person: { include: { sessions: { take: 1 } } } },
        orderBy: { personId: 'asc' },
      },
      signOffs: { orderBy: { at: 'asc' } },
      seal: { omit: { input: true, result: true } },
    },
  });
  if (row === null) return null;
  const tallies = await source.tally.findMany({ where: { countId }, orderBy: { id: 'asc' } });
  const assignments = row.windows.flatMap((window) => window.assignments);
  return {
    id: row.id,
    name: row.name,
    waterbody: row.waterbody,
    date: row.date,
    timeZone: row.timeZone,
    protocol: JSON.parse(row.protocol) as Protocol,
    contentHash: row.contentHash,
    history: JSON.parse(row.history) as EarlierNumber[],
    samples: JSON.parse(row.samples) as ScanSample[],
    marks: JSON.parse(row.marks) as NotedMark[],
    shoreline: JSON.parse(row.shoreline) as ShorePart[],
    plannedAt: row.plannedAt,
    windows: row.windows.map(({ id, start, end, slackMinutes }) => ({
      id,
      start,
      end,
      slackMinutes,
    })),
    closedWindows: new Set(
      row.windows.filter(({ closing }) => closing !== null).map(({ id }) => id),
    ),
    sections: row.sections.map(({ id, name, polygon }) => ({
      id,
      name,
      polygon: JSON.parse(polygon) as Polygon,
    })),
    vantages: row.vantages.map(({ id, name, lon, lat }) => ({
      id,
      name,
      position: [lon, lat] satisfies Position,
    })),
    views: row.views.map(({ vantageId, polygon }) => ({
      vantage: vantageId,
      polygon: JSON.parse(polygon) as Polygon,
    })),
    participants: row.people.map(({ person, roles }) => ({
      person: { id: person.id, name: person.name },
      roles: JSON.parse(roles) as Role[],
      hasJoined: person.sessions.length > 0,
    })),
    assignments: assignments
      .map((assignment) => ({
        id: assignment.id,
        person: assignment.personId,
        sections: JSON.parse(assignment.sections) as string[],
        window: assignment.windowId,
        vantage: assignment.vantageId,
        contentHash: assignment.contentHash,
      }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
    tallies: tallies.map(tallyHeader),
    signOffs: row.signOffs.map(({ byId, role, at, inputHash }) => ({
      by: byId,
      role: role as SignOffRecord['role'],
      at,
      inputHash,
    })),
    seal: row.seal && {
      id: row.seal.id,
      by: row.seal.byId,
      at: row.seal.at,
      inputHash: row.seal.inputHash,
      resultHash: row.seal.resultHash,
      auditRoot: row.seal.auditRoot,
      auditSize: row.seal.auditSize,
    },
  };
}

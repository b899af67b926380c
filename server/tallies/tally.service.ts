import { Injectable } from '@nestjs/common';
import type * as Api from '../api/generated/schema.js';
import { checkTally, type RawTally } from '../core/model/check-tally.js';
import { Refusal } from '../core/refusal.js';
import { peopleOf, type CountRecord } from '../database/count-record.js';
import { Database } from '../database/database.js';
import {
  loadTallies,
  storeTally,
  tallyContent,
  type TallyVersion,
} from '../database/tally-rows.js';
import { mayEnter, signedIn, type Viewer } from '../people/viewer.js';
import { allowedIn, maySeeTally, openCount, type CountAccess } from '../plans/count-access.js';
import { contentHash } from '../seals/canonical.js';
import { currentTallies } from './blindness.js';
import { checkAgainstCount } from './check-against-count.js';
import { tallyEntry } from './tally-entry.js';
import { tallyView } from './tally.view.js';
import { say } from '../core/model/saying.js';

@Injectable()
export class TallyService {
  constructor(private readonly database: Database) {}

  /**
   * @throws Refusal NOT_FOUND where there is no such tally or the viewer may not see it yet: which of
   *   the two is not told
   */
  async tally(viewer: Viewer | null, id: string, countId: string | null): Promise<Api.Tally> {
    const someone = signedIn(viewer);
    const rows = await this.database.read.tally.findMany({
      where: {
        id,
        ...(countId !== null && { countId }),
        participant: { count: { people: { some: { personId: someone.personId } } } },
      },
      select: { countId: true },
    });
    const holders = rows.filter((row) => mayEnter(someone, row.countId));
    const [holder] = holders;
    if (holders.length > 1) {
      throw new Refusal(
        'NOT_FOUND',
        say('The tally {id} is not the only one of that id: say which count you mean.', { id }),
      );
    }
    if (holder !== undefined) {
      const access = await openCount(this.database.read, viewer, holder.countId);
      const [tally] = await loadTallies(this.database.read, holder.countId, [id]);
      if (tally !== undefined && maySeeTally(access, tally)) return tallyView(access.record, tally);
    }
    throw new Refusal(
      'NOT_FOUND',
      say(
        "There is no tally {id} that you may see. Another's tally of a cell can be seen once your own of it is submitted, or its window is closed.",
        { id },
      ),
    );
  }

  /** The viewer's own tallies of a count that is open to them, newest versions. */
  async ownTallies({ viewer, record }: CountAccess): Promise<Api.Tally[]> {
    const tallies = currentTallies(await loadTallies(this.database.read, record.id));
    return tallies
      .filter(({ party }) => party.includes(viewer.personId))
      .map((tally) => tallyView(record, tally));
  }

  /**
   * Takes a tally in, once: the same id with the same content gives the stored one again, whatever
   * has happened since.
   *
   * @throws Refusal BAD_INPUT with every fault at once; ID_REUSED, ALREADY_SUBMITTED, NOT_ALLOWED,
   *   NOT_NOW; NOT_SIGNED_IN where somebody else is signed in than the tally says
   */
  submitTally(viewer: Viewer | null, input: Api.TallyInput): Promise<Api.Tally> {
    return this.database.write(async (transaction) => {
      const access = await openCount(transaction, viewer, input.countId);
      const { record } = access;
      checkStillSignedIn(access, input.observerId ?? null);
      const [stored] = await loadTallies(transaction, record.id, [input.id]);
      if (stored === undefined) allowedIn(access, 'SUBMIT_TALLY');
      const checked = checkTally(rawTally(access.viewer.personId, input), {
        ...record,
        people: peopleOf(record),
      });
      if (!checked.ok) throw Refusal.badInput(checked.faults);
      const { tally, samples, marks } = checked.value;
      const submission = tallyContent({
        ...tally,
        samples,
        marks,
        version: 1,
        replaces: input.replaces ?? null,
        reason: input.reason?.trim() ?? null,
        submittedAt: '',
      });
      const hash = contentHash(submission);
      if (stored !== undefined) return { value: sameTally(record, stored, hash), entries: [] };
      const replaced = checkAgainstCount(
        access,
        submission,
        currentTallies(await loadTallies(transaction, record.id)),
      );
      const version: TallyVersion = {
        ...tally,
        samples,
        marks,
        version: (replaced?.version ?? 0) + 1,
        replaces: submission.replaces,
        reason: submission.reason,
        submittedAt: new Date().toISOString(),
        contentHash: hash,
      };
      await storeTally(transaction, record.id, version);
      return {
        value: tallyView(record, version),
        entries: [tallyEntry(record.id, version.observer, version)],
      };
    });
  }
}

/** A phone that two observers share must not send the tally of one as that of the other. */
function checkStillSignedIn({ viewer }: CountAccess, observer: string | null): void {
  if (observer === null || observer === viewer.personId) return;
  throw new Refusal(
    'NOT_SIGNED_IN',
    say('This tally is not {name}’s, who is signed in now. Sign in as its observer to send it.', {
      name: viewer.name,
    }),
  );
}

function sameTally(record: CountRecord, stored: TallyVersion, hash: string): Api.Tally {
  if (stored.contentHash === hash) return tallyView(record, stored);
  throw new Refusal(
    'ID_REUSED',
    say(
      'Another tally was already submitted under the id {id}. Submit this one under a new id; to correct the earlier one, name it in "replaces" and say why.',
      { id: stored.id },
    ),
  );
}

function rawTally(observer: string, input: Api.TallyInput): RawTally {
  return {
    id: input.id,
    observer,
    sections: input.sectionIds,
    window: input.windowId,
    vantage: input.vantageId ?? null,
    party: input.partyIds ?? null,
    start: input.start ?? null,
    end: input.end ?? null,
    scope: input.scope,
    coverage: input.coverage,
    seenArea: input.seenArea ?? null,
    lines: input.lines.map(({ id, marks: _, totalMethod, ...fields }) => ({
      ...fields,
      'total-method': totalMethod ?? null,
      line: id,
    })),
    samples: input.samples ?? null,
    marks: input.lines.flatMap(({ id, marks }, index) =>
      (marks ?? []).map((mark) => ({ row: index + 1, line: id, ...mark })),
    ),
    conditions: input.conditions ?? null,
  };
}

import { Injectable } from '@nestjs/common';
import type * as Api from '../api/generated/schema.js';
import type { CheckedCount } from '../core/model/check-count.js';
import { Refusal } from '../core/refusal.js';
import { countChain } from '../database/audit-log.js';
import { Database } from '../database/database.js';
import type { Source } from '../database/source.js';
import { loadTallies } from '../database/tally-rows.js';
import { checkFolder } from '../exchange/check-folder.js';
import { isEverAllowed } from '../people/policy.js';
import { mayEnter, signedIn, type Viewer } from '../people/viewer.js';
import { currentTallies } from '../tallies/blindness.js';
import { allowedIn, openCount, type CountAccess } from './count-access.js';
import { assignmentView, countView, coverageViews, type CountView } from './count.view.js';
import { planFiles } from './plan-files.js';
import { storeCount } from './store-count.js';
import { say } from '../core/model/saying.js';

/** Plans, whole counts, and who counts where. */
@Injectable()
export class PlanService {
  constructor(private readonly database: Database) {}

  /** Whether this person may plan or import counts: those who lead one, and those named at the start. */
  async mayPlan(viewer: Viewer | null): Promise<boolean> {
    return viewer !== null && isPlanner(this.database.read, viewer);
  }

  /** The counts that the viewer takes part in and this session opens, newest first. */
  async counts(viewer: Viewer | null): Promise<CountView[]> {
    const someone = signedIn(viewer);
    const rows = await this.database.read.count.findMany({
      where: { people: { some: { personId: someone.personId } } },
      select: { id: true },
      orderBy: [{ date: 'desc' }, { id: 'asc' }],
    });
    const open = rows.filter(({ id }) => mayEnter(someone, id));
    return Promise.all(open.map(({ id }) => this.count(viewer, id)));
  }

  /** @throws Refusal NOT_SIGNED_IN, NOT_FOUND */
  async count(viewer: Viewer | null, countId: string): Promise<CountView> {
    return countView(await openCount(this.database.read, viewer, countId));
  }

  /** @throws Refusal BAD_INPUT with every fault, ID_REUSED, NOT_ALLOWED */
  async planCount(viewer: Viewer | null, input: Api.PlanCountInput): Promise<CountView> {
    const planner = await this.planner(viewer);
    return this.takeIn(planner, await checkFolder(planFiles(input), 'plan'), 'count.plan');
  }

  /** @throws Refusal BAD_INPUT with every fault of every file, ID_REUSED, NOT_ALLOWED */
  async importCount(
    viewer: Viewer | null,
    files: readonly Api.FolderFileInput[],
  ): Promise<CountView> {
    const planner = await this.planner(viewer);
    const checked = await checkFolder(files.map(({ name, text }) => ({ name, content: text })));
    return this.takeIn(planner, checked, 'count.import');
  }

  /** @throws Refusal NOT_SIGNED_IN, NOT_ALLOWED */
  private async planner(viewer: Viewer | null): Promise<Viewer> {
    const someone = signedIn(viewer);
    if (await isPlanner(this.database.read, someone)) return someone;
    throw new Refusal(
      'NOT_ALLOWED',
      say('Counts are planned and imported by leaders who signed in with their password.'),
    );
  }

  private takeIn(
    planner: Viewer,
    checked: CheckedCount,
    act: 'count.plan' | 'count.import',
  ): Promise<CountView> {
    if (!checked.ok) throw Refusal.badInput(checked.faults);
    const { snapshot, protocol } = checked;
    return this.database.write(async (transaction) => {
      const by = { id: planner.personId, name: planner.name };
      const entries = await storeCount(transaction, { snapshot, protocol, act, by, leaveOut: [] });
      return { value: countView(await openCount(transaction, planner, snapshot.id)), entries };
    });
  }

  /**
   * Closes a window for good. Closing it again changes nothing.
   *
   * @throws Refusal NOT_FOUND, NOT_ALLOWED, NOT_NOW
   */
  closeWindow(viewer: Viewer | null, countId: string, windowId: string): Promise<CountView> {
    return this.database.write(async (transaction) => {
      const access = await openCount(transaction, viewer, countId);
      const { record } = access;
      if (isEverAllowed('CLOSE_WINDOW', access.roles) && record.closedWindows.has(windowId)) {
        return { value: countView(access), entries: [] };
      }
      allowedIn(access, 'CLOSE_WINDOW');
      if (!record.windows.some(({ id }) => id === windowId)) {
        const ids = record.windows.map(({ id }) => id).join(', ');
        throw new Refusal(
          'NOT_FOUND',
          say('This count has no window {windowId}; its windows are {ids}.', { windowId, ids }),
        );
      }
      const by = access.viewer.personId;
      await transaction.windowClosing.create({
        data: { countId, windowId, closedBy: by, closedAt: new Date().toISOString() },
      });
      return {
        value: countView(await openCount(transaction, viewer, countId)),
        entries: [
          { chain: countChain(countId), by, act: 'window.close', details: { window: windowId } },
        ],
      };
    });
  }

  /** Leaders and compilers see all, everyone else their own. */
  async assignments(access: CountAccess): Promise<Api.Assignment[]> {
    const { record, roles, viewer } = access;
    const seesAll = roles.includes('LEADER') || roles.includes('COMPILER');
    const current = currentTallies(await loadTallies(this.database.read, record.id));
    return record.assignments
      .filter(({ person }) => seesAll || person === viewer.personId)
      .map((assignment) => assignmentView(access, assignment, current));
  }

  /** @throws Refusal NOT_ALLOWED */
  coverage(access: CountAccess): Api.Coverage[] {
    allowedIn(access, 'SEE_COVERAGE');
    return coverageViews(access);
  }
}

async function isPlanner(source: Source, viewer: Viewer): Promise<boolean> {
  // A session by invite link is good for the counts of its links only.
  if (viewer.counts !== null) return false;
  const person = await source.person.findUniqueOrThrow({
    where: { id: viewer.personId },
    include: { participants: true },
  });
  return (
    person.mayPlan === 1 ||
    person.participants.some(({ roles }) => (JSON.parse(roles) as string[]).includes('leader'))
  );
}

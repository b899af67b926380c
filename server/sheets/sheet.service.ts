import { Injectable } from '@nestjs/common';
import { Refusal } from '../core/refusal.js';
import type { NameLanguage } from '../core/taxa/taxon-name.js';
import { Database } from '../database/database.js';
import { mayEnter, signedIn, type Viewer } from '../people/viewer.js';
import { allowedIn, nameOf, openCount } from '../plans/count-access.js';
import { drawFieldSheet, PAPERS, type Paper } from './draw-field-sheet.js';
import { fieldSheet, SHEET_LANGUAGES } from './field-sheet.js';
import { alternatives, say } from '../core/model/saying.js';

@Injectable()
export class SheetService {
  constructor(private readonly database: Database) {}

  /**
   * The field sheet of an assignment as a PDF, for its observer and for leaders of the count.
   *
   * @throws Refusal BAD_INPUT, NOT_SIGNED_IN, NOT_FOUND, NOT_ALLOWED
   */
  async fieldSheet(
    viewer: Viewer | null,
    assignmentId: string,
    paper: string,
    language: string,
  ): Promise<Buffer> {
    const someone = signedIn(viewer);
    const missing = new Refusal(
      'NOT_FOUND',
      say(
        'There is no assignment {assignmentId} whose field sheet is yours to print. Go back to your assignments and take the link from there.',
        { assignmentId },
      ),
    );
    const row = await this.database.read.assignment.findUnique({
      where: { id: assignmentId },
      select: { countId: true },
    });
    if (row === null || !mayEnter(someone, row.countId)) throw missing;
    const access = await openCount(this.database.read, viewer, row.countId);
    allowedIn(access, 'PRINT_FIELD_SHEET');
    const { record, roles } = access;
    const assignment = record.assignments.find(({ id }) => id === assignmentId);
    const isOwn = assignment?.person === someone.personId;
    if (assignment === undefined || !(isOwn || roles.includes('LEADER'))) throw missing;
    const window = record.windows.find(({ id }) => id === assignment.window);
    if (window === undefined) throw new Error(`assignment ${assignmentId} has no window`);
    const plan = {
      count: record,
      window,
      sections: record.sections.filter(({ id }) => assignment.sections.includes(id)),
      vantage: record.vantages.find(({ id }) => id === assignment.vantage) ?? null,
      observer: nameOf(record, assignment.person),
    };
    return drawFieldSheet(fieldSheet(plan, readLanguage(language)), readPaper(paper));
  }
}

function readLanguage(language: string): NameLanguage {
  const known = Object.keys(SHEET_LANGUAGES) as NameLanguage[];
  const found = known.find((one) => one === language);
  if (found !== undefined) return found;
  throw new Refusal(
    'BAD_INPUT',
    say('There is no field sheet in the language "{language}". Expected {known}.', {
      language,
      known: alternatives(known),
    }),
  );
}

function readPaper(paper: string): Paper {
  const known = Object.keys(PAPERS) as Paper[];
  const found = known.find((one) => one === paper);
  if (found !== undefined) return found;
  throw new Refusal(
    'BAD_INPUT',
    say('There is no field sheet for paper "{paper}". Expected {known}.', {
      paper,
      known: alternatives(known),
    }),
  );
}

import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Files that take long, the longest first: begun last, one of them would run on alone while the
 * other cores have nothing left to do. The rest follow as Vitest has them.
 */
const long = [
  'tests/web/main-job.test.ts',
  'tests/web/offline.test.ts',
  'tests/web/desk-browser.test.ts',
  'tests/web/raft-browser.test.ts',
  'tests/core/ledger.test.ts',
  'tests/web/entry-browser.test.ts',
  'tests/core/ledger-links.test.ts',
  'tests/web/kept-tallies.test.tsx',
  'tests/api/blindness.test.ts',
  'tests/api/crash.test.ts',
  'tests/published/linear-program.test.ts',
  'tests/core/agree/agreement-of.test.ts',
  'tests/core/joint-feasibility-all-small.test.ts',
  'tests/core/disagreements/identified-differently.test.ts',
];

/** Runs the files that take longest first. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const usual = await super.sort(files);
    const rank = ({ moduleId }: TestSpecification): number => {
      const index = long.findIndex((name) => moduleId.endsWith(name));
      return index === -1 ? long.length : index;
    };
    return usual.toSorted((one, other) => rank(one) - rank(other));
  }
}

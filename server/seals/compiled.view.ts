import type * as Api from '../api/generated/schema.js';
import type { CompiledLine, Result } from '../core/model/result.js';
import { englishName } from '../core/taxa/taxon-name.js';
import type { CountRecord, SealRecord } from '../database/count-record.js';
import { personView } from '../plans/plan.view.js';
import type { LoadedReview } from '../reviews/loaded-review.js';
import type { SourceLines } from '../reviews/source-lines.js';
import { postingText } from './posting-text.js';

/** A compiled count whose whole ledger is there: its resolvers pick from it. */
export type CompiledView = Omit<Api.CompiledCount, 'line' | 'ledger'> & {
  readonly ledger: readonly Api.Posting[];
};

/** The compiled count of a result, each posting in words and with the tally lines behind it. */
export function compiledView(
  review: Pick<LoadedReview, 'access' | 'rulings'>,
  result: Result<unknown>,
  lines: SourceLines,
): CompiledView {
  const { record } = review.access;
  const sum = (number: (line: CompiledLine) => number): number =>
    result.compiled.reduce((total, line) => total + number(line), 0);
  const words = postingText(review, result);
  return {
    countId: record.id,
    reported: result.reported,
    draft: record.seal === null,
    total: sum(({ number }) => number),
    flyingThroughTotal: sum(({ flyingThrough }) => flyingThrough),
    lines: result.compiled.map((line) => ({
      ...line,
      englishName: englishName(line.candidates),
      candidates: [...line.candidates],
    })),
    allocation: result.allocation.map((each) => ({
      ...each,
      englishName: englishName([each.species]),
      of: [...each.of],
    })),
    ledger: result.ledger.map((posting) => ({
      id: posting.id,
      from: posting.from,
      to: posting.to,
      taxon: posting.taxon,
      number: posting.number,
      becauseKind: posting.because.kind,
      becauseRef: posting.because.ref,
      text: words(posting),
      lines: lines.of(posting.because.ref.split(/[+=]/)),
    })),
    signOffs: record.signOffs.map(({ by, role, at, inputHash }) => ({
      by: personView(record, by),
      as: role.toUpperCase() as Api.Role,
      at,
      inputHash,
    })),
    seal: record.seal && sealView(record, record.seal),
  };
}

export function sealView(record: CountRecord, seal: SealRecord): Api.Seal {
  return { ...seal, by: personView(record, seal.by) };
}

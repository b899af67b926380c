import type { Result } from './result.js';
import { saidIn, type Saying, type Wording } from './saying.js';

/** The result with its sentences in a language; keys keep their order, so that its JSON does too. */
export function wordedResult(result: Result, wording: Wording): Result<string> {
  const said = (saying: Saying): string => saidIn(saying, wording);
  const saidOrNull = (saying: Saying | null): string | null => saying && said(saying);
  // A key that is given anew stays where it was.
  return {
    ...result,
    cells: result.cells.map((cell) => ({ ...cell, witness: saidOrNull(cell.witness) })),
    disagreements: result.disagreements.map((disagreement) => ({
      ...disagreement,
      text: said(disagreement.text),
      proposals: disagreement.proposals.map((proposal) => ({
        ...proposal,
        text: said(proposal.text),
      })),
    })),
    links: result.links.map((link) => ({
      ...link,
      evidence: link.evidence.map((evidence) => ({ ...evidence, text: said(evidence.text) })),
    })),
    agreement: {
      ...result.agreement,
      detection: result.agreement.detection.map((detection) => ({
        ...detection,
        warning: saidOrNull(detection.warning),
      })),
    },
    rulings: result.rulings.map((outcome) => ({ ...outcome, text: said(outcome.text) })),
  };
}

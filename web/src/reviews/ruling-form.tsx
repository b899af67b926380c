import { i18n, type MessageDescriptor } from '@lingui/core';
import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { Link, useLocation } from 'wouter';
import { v7 } from 'uuid';
import type { RulingState, SourceFragment } from '../graphql/generated/graphql.js';
import { isStale, readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { SelectField } from '../ui/select-field.js';
import { TextArea } from '../ui/text-field.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { pathOf } from '../ui/path.js';
import {
  changesGroup,
  decisionFaults,
  decisionInput,
  decisionKinds,
  draftOf,
  isAboutLine,
  targetInput,
  type DecisionDraft,
  type ProposedDecision,
} from './decision-draft.js';
import { DecisionFields, type DecidedGroup } from './decision-fields.js';
import type { CellOfGroup } from './group-change-words.js';
import { isForRuling } from './disagreement-order.js';
import { GiveRuling } from './ruling-documents.js';
import { ofReviews } from './listed-disagreement.js';
import type { Target } from './ruling-target.js';

interface Ruled {
  readonly id: string;
  readonly group?: DecidedGroup | null | undefined;
  readonly cell?: CellOfGroup | null | undefined;
  readonly link?: { readonly id: string } | null | undefined;
  readonly lines: readonly SourceFragment[];
  readonly proposals: readonly {
    readonly text: string;
    readonly target: Target;
    readonly decision: ProposedDecision;
  }[];
  readonly ruling?: { readonly id: string; readonly state: RulingState } | null | undefined;
}

/** The act of the page: proposals as starting points, every part of them open to change, and a reason. */
export function RulingForm(props: {
  readonly countId: string;
  readonly disagreement: Ruled;
  /** The hash of the review that this page shows. */
  readonly inputHash: string;
  readonly mayRule: boolean;
  readonly next: string | null;
  readonly onStale: () => void;
}): ReactNode {
  const { disagreement } = props;
  const group = disagreement.group ?? null;
  const settled =
    disagreement.ruling?.state === 'APPLIED' || disagreement.ruling?.state === 'NEEDS_SECOND';
  const [isOpen, setOpen] = useState(!settled);
  const [chosen, setChosen] = useState<number | null>(null);
  const [draft, setDraft] = useState<DecisionDraft>(() => firstDraft(disagreement));
  const [target, setTarget] = useState<Target | null>(null);
  const [reason, setReason] = useState('');
  const [faults, setFaults] = useState<ReadonlyMap<string, string>>(new Map());
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, giveRuling] = useMutation(GiveRuling);
  const announce = useAnnounce();
  const [, navigate] = useLocation();

  function start(index: number): void {
    const proposal = disagreement.proposals[index];
    if (proposal === undefined) return;
    setChosen(index);
    setTarget(proposal.target);
    setDraft(draftOf(proposal.decision, proposal.target, group));
    setFaults(new Map());
  }

  async function submit(): Promise<void> {
    const found = decisionFaults(draft, reason);
    setFaults(found);
    setTrouble(null);
    if (found.size > 0) {
      announce(t`The ruling is not complete yet.`);
      return;
    }
    const answer = await giveRuling(
      {
        input: {
          id: v7(),
          countId: props.countId,
          disagreementId: disagreement.id,
          target: targetInput(draft, isAboutLine(draft.kind) ? null : target),
          decision: decisionInput(draft),
          reason: reason.trim(),
          replaces:
            disagreement.ruling && disagreement.ruling.state !== 'WITHDRAWN'
              ? disagreement.ruling.id
              : null,
          inputHash: props.inputHash,
        },
      },
      ofReviews,
    );
    if (answer.error) {
      const found = readTrouble(answer.error);
      setTrouble(found);
      if (isStale(found)) props.onStale();
    } else if (changesGroup(draft.kind) && answer.data?.giveRuling.state === 'APPLIED') {
      // The group of this page is no longer there: what became of it stands in the list.
      announce(
        draft.kind === 'merge-groups'
          ? t`Ruled. The two groups are settled together.`
          : t`Ruled. The group is taken apart.`,
      );
      navigate(pathOf('counts', props.countId, 'disagreements'));
    } else {
      setOpen(false);
      announce(
        answer.data?.giveRuling.state === 'NEEDS_SECOND'
          ? t`Ruled. It waits for a second person, since you counted here.`
          : t`Ruled.`,
      );
    }
  }

  const kinds = kindsFor(disagreement);
  const isToBeKnown = !isForRuling(disagreement);
  return (
    <section className="panel stack" aria-labelledby="ruling-heading">
      <h2 id="ruling-heading" tabIndex={-1}>
        <Trans>Ruling</Trans>
      </h2>
      {!isOpen ? (
        <AfterRuling
          countId={props.countId}
          next={props.next}
          settled={settled}
          onAgain={() => setOpen(true)}
          mayRule={props.mayRule}
        />
      ) : !props.mayRule ? (
        <p className="soft">
          <Trans>Compilers rule here. You can read everything.</Trans>
        </p>
      ) : kinds.length === 0 ? (
        <p className="soft">
          <Trans>There is nothing to rule on here; it is to be known.</Trans>
        </p>
      ) : (
        <form
          className="stack"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            void submit();
          }}
        >
          {isToBeKnown ? (
            <p className="soft">
              <Trans>
                This needs no ruling; it is to be known. If one of its tally lines is wrong, you can
                rule on that line.
              </Trans>
            </p>
          ) : null}
          {disagreement.proposals.length === 0 ? null : (
            <div className="field" role="group" aria-label={t`Start from a proposal`}>
              <span className="label">
                <Trans>Start from a proposal</Trans>
              </span>
              <div className="stack-tight">
                {disagreement.proposals.map((proposal, index) => (
                  <button
                    key={index}
                    type="button"
                    className="button proposal"
                    aria-pressed={chosen === index}
                    onClick={() => start(index)}
                  >
                    {proposal.text}
                  </button>
                ))}
              </div>
            </div>
          )}
          <SelectField
            label={t`Decision`}
            options={kinds.map(({ kind, words }) => ({ value: kind, label: i18n._(words) }))}
            value={draft.kind}
            onChange={(value) => {
              setDraft({ ...draft, kind: value });
              setChosen(null);
            }}
          />
          <DecisionFields
            draft={draft}
            group={group}
            cell={disagreement.cell ?? null}
            lines={disagreement.lines}
            faults={faults}
            onChange={(next) => {
              setDraft(next);
              setChosen(null);
            }}
          />
          <TextArea
            label={t`Reason`}
            hint={t`Anyone who reads the count later sees it.`}
            fault={faults.get('reason')}
            required
            value={reason}
            onChange={setReason}
          />
          {trouble === null ? null : <TroubleNotice trouble={trouble} />}
          <button type="submit" className="button" data-kind="main" disabled={fetching}>
            {fetching
              ? t`Ruling …`
              : settled
                ? t`Rule anew, in place of the other`
                : t`Give this ruling`}
          </button>
        </form>
      )}
    </section>
  );
}

/** The kinds of decision that fit what the disagreement is about, and that can be taken on it. */
function kindsFor(
  disagreement: Ruled,
): readonly { readonly kind: string; readonly words: MessageDescriptor }[] {
  return [
    ...(disagreement.link ? decisionKinds.link : []),
    ...(disagreement.group
      ? decisionKinds.group.filter(
          ({ kind }) =>
            (kind !== 'merge-groups' || (disagreement.cell?.groups.length ?? 0) > 1) &&
            (kind !== 'split-group' || (disagreement.group?.taxa.length ?? 0) > 1),
        )
      : []),
    ...(disagreement.lines.length > 0 ? decisionKinds.line : []),
  ];
}

function firstDraft(disagreement: Ruled): DecisionDraft {
  const kind = kindsFor(disagreement)[0]?.kind ?? 'let-stand';
  return draftOf({ kind }, null, disagreement.group ?? null);
}

function AfterRuling(props: {
  readonly countId: string;
  readonly next: string | null;
  readonly settled: boolean;
  readonly mayRule: boolean;
  readonly onAgain: () => void;
}): ReactNode {
  return (
    <Notice kind="done" title={props.settled ? t`A ruling is given.` : t`Your ruling is given.`}>
      <div className="row">
        {props.next === null ? (
          <Link
            href={pathOf('counts', props.countId, 'disagreements')}
            className="button"
            data-kind="main"
          >
            <Trans>Back to the list</Trans>
          </Link>
        ) : (
          <Link
            href={pathOf('counts', props.countId, 'disagreements', props.next)}
            className="button"
            data-kind="main"
          >
            <Trans>Next disagreement</Trans>
          </Link>
        )}
        {props.mayRule ? (
          <button type="button" className="button" onClick={props.onAgain}>
            <Trans>Rule anew</Trans>
          </button>
        ) : null}
      </div>
    </Notice>
  );
}

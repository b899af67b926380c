import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { v7 } from 'uuid';
import type { GivenRulingFragment, LinkPartsFragment } from '../graphql/generated/graphql.js';
import { isStale, readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { TextArea } from '../ui/text-field.js';
import { ofReviews } from './listed-disagreement.js';
import { GiveRuling } from './ruling-documents.js';

/** The act of the page: one flock or two, with a reason. */
export function LinkRuling(props: {
  readonly link: LinkPartsFragment;
  readonly countId: string;
  /** The hash of the review that the page shows. */
  readonly inputHash: string;
  /** The ruling that stands, that waits for a second person, or that has become stale. */
  readonly standing: GivenRulingFragment | null;
  readonly mayRule: boolean;
  /** Goes on to the next link without a ruling, if there is one. */
  readonly onNext: (() => void) | null;
  readonly onStale: () => void;
}): ReactNode {
  const { link, standing } = props;
  const [isOpen, setOpen] = useState(standing === null || standing.state === 'STALE');
  const [reason, setReason] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [fault, setFault] = useState<string | undefined>(undefined);
  const [{ fetching }, giveRuling] = useMutation(GiveRuling);
  const announce = useAnnounce();

  async function rule(kind: 'confirm-link' | 'reject-link'): Promise<void> {
    setTrouble(null);
    if (reason.trim() === '') {
      setFault(t`Say why, so that anyone can follow the ruling.`);
      announce(t`The ruling needs a reason.`);
      return;
    }
    setFault(undefined);
    const answer = await giveRuling(
      {
        input: {
          id: v7(),
          countId: props.countId,
          target: { kind: 'link', link: link.id },
          decision: { kind },
          reason: reason.trim(),
          replaces: standing?.id ?? null,
          inputHash: props.inputHash,
        },
      },
      ofReviews,
    );
    if (answer.error) {
      const found = readTrouble(answer.error);
      setTrouble(found);
      if (isStale(found)) props.onStale();
    } else {
      setReason('');
      setOpen(false);
      announce(
        answer.data?.giveRuling.state === 'NEEDS_SECOND'
          ? t`Ruled. It waits for a second person, since you counted here.`
          : t`Ruled.`,
      );
    }
  }

  return (
    <section className="panel stack" aria-labelledby="ruling-heading">
      <h2 id="ruling-heading" tabIndex={-1}>
        <Trans>Ruling</Trans>
      </h2>
      {!props.mayRule ? (
        <p className="soft">
          <Trans>Compilers rule here. You can read everything.</Trans>
        </p>
      ) : !isOpen ? (
        <Notice kind="done" title={t`A ruling is given.`}>
          <div className="row">
            {props.onNext === null ? null : (
              <button type="button" className="button" data-kind="main" onClick={props.onNext}>
                <Trans>Next double count</Trans>
              </button>
            )}
            <button type="button" className="button" onClick={() => setOpen(true)}>
              <Trans>Rule anew</Trans>
            </button>
          </div>
        </Notice>
      ) : (
        <>
          <p className="soft small">
            <Trans>
              Is it one flock, seen twice? Then its birds are counted once; if not, both are
              counted.
            </Trans>
          </p>
          <TextArea
            label={t`Reason`}
            hint={t`Anyone who reads the count later sees it.`}
            fault={fault}
            required
            value={reason}
            onChange={setReason}
          />
          {trouble === null ? null : <TroubleNotice trouble={trouble} />}
          <button
            type="button"
            className="button"
            data-kind="main"
            disabled={fetching}
            onClick={() => void rule('confirm-link')}
          >
            <Trans>Confirm: one flock</Trans>
          </button>
          <button
            type="button"
            className="button"
            disabled={fetching}
            onClick={() => void rule('reject-link')}
          >
            <Trans>Reject: two flocks</Trans>
          </button>
        </>
      )}
    </section>
  );
}

import { plural, t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { v7 } from 'uuid';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { ActForm } from '../ui/act-form.js';
import { useAnnounce } from '../ui/announcer.js';
import { TextArea } from '../ui/text-field.js';
import type { ListedDisagreement } from './listed-disagreement.js';
import { GiveRuling } from './ruling-documents.js';

/** Settles the small ones together: the draft stands for every open note that is shown, for one reason. */
export function LetStandForm(props: {
  readonly countId: string;
  readonly disagreements: readonly ListedDisagreement[];
  /** The hash of the review that the list shows. */
  readonly inputHash: string;
  readonly onDone: () => void;
}): ReactNode {
  const notes = props.disagreements.filter(
    (one) =>
      one.severity === 'NOTE' && one.group && (!one.ruling || one.ruling.state === 'WITHDRAWN'),
  );
  const [reason, setReason] = useState('');
  const [progress, setProgress] = useState<number | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [, giveRuling] = useMutation(GiveRuling);
  const announce = useAnnounce();

  async function settleAll(): Promise<void> {
    setTrouble(null);
    let settled = 0;
    // Each ruling changes the review, so the next is given with the hash that the last one made.
    let inputHash = props.inputHash;
    for (const note of notes) {
      setProgress(settled);
      const answer = await giveRuling({
        input: {
          id: v7(),
          countId: props.countId,
          disagreementId: note.id,
          decision: { kind: 'let-stand' },
          reason: reason.trim(),
          inputHash,
        },
      });
      if (answer.error) {
        setTrouble(readTrouble(answer.error));
        break;
      }
      inputHash = answer.data?.giveRuling.inputHash ?? inputHash;
      settled += 1;
    }
    setProgress(null);
    announce(t`The draft stands for ${plural(settled, { one: '# note', other: '# notes' })}.`);
    props.onDone();
  }

  const all = notes.length;
  if (all === 0 && trouble === null) return null;
  const stake = notes.reduce((sum, note) => sum + note.birds, 0);
  return (
    <details className="panel">
      <summary>
        <Plural
          value={all}
          one="Let the draft stand for the one note shown"
          other="Let the draft stand for all # notes shown"
        />
      </summary>
      <ActForm trouble={trouble} act={settleAll}>
        <p>
          <Trans>
            <Plural value={all} one="# open note" other="# open notes" /> with{' '}
            <Plural value={stake} one="# bird" other="# birds" /> at stake together. Each gets its
            own ruling with this reason; any of them can be taken back later.
          </Trans>
        </p>
        <TextArea label={t`Reason for all of them`} required value={reason} onChange={setReason} />
        <div>
          <button
            type="submit"
            className="button"
            data-kind="main"
            disabled={progress !== null || reason.trim() === ''}
          >
            {progress === null ? t`Let the draft stand` : t`${progress} of ${all} …`}
          </button>
        </div>
      </ActForm>
    </details>
  );
}

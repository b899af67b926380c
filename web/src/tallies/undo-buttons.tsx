import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useEffect, type ReactNode } from 'react';
import { useAnnounce } from '../ui/announcer.js';
import { readTaxon } from '../ui/taxon.js';
import type { Patch, Step } from './draft-history.js';
import type { Draft } from './draft.js';
import { quantityWords } from './line-words.js';

export interface UndoProps {
  readonly draft: Draft;
  /** What would be undone and done again; absent where there is nothing. */
  readonly lastStep: Step | undefined;
  readonly nextStep: Step | undefined;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** Takes back what was done to the draft, step by step, and puts it in again; Ctrl+Z and Ctrl+Y too. */
export function UndoButtons(props: UndoProps): ReactNode {
  const { draft, lastStep, nextStep } = props;
  const announce = useAnnounce();

  function undo(): void {
    if (lastStep === undefined) return;
    props.undo();
    const change = patchWords(draft, lastStep.back);
    announce(t`Undone. ${change}`);
  }

  function redo(): void {
    if (nextStep === undefined) return;
    props.redo();
    const change = patchWords(draft, nextStep.forth);
    announce(t`Done again. ${change}`);
  }

  useEffect(() => {
    const listen = (event: KeyboardEvent): void => {
      // Within a text field the keys undo the text, as everywhere.
      if (!(event.ctrlKey || event.metaKey) || isText(event.target)) return;
      const key = event.key.toLowerCase();
      if (key === 'y' || (key === 'z' && event.shiftKey)) redo();
      else if (key === 'z') undo();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  });

  return (
    <>
      <button
        type="button"
        className="button undo-button"
        aria-disabled={lastStep === undefined}
        onClick={undo}
      >
        <span aria-hidden="true">↶</span> <Trans>Undo</Trans>
      </button>
      <button
        type="button"
        className="button undo-button"
        aria-disabled={nextStep === undefined}
        onClick={redo}
      >
        <span aria-hidden="true">↷</span> <Trans>Redo</Trans>
      </button>
    </>
  );
}

function isText(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && target.type === 'text';
}

/** What a step comes to, in a few words: `Mallard: 12.` */
function patchWords(draft: Draft, { lines, fields }: Patch): string {
  const parts = lines.map(({ id, line }) => {
    if (line !== null) return `${readTaxon(line.taxon).common}: ${quantityWords(line)}.`;
    const removed = draft.lines.find((one) => one.id === id);
    if (removed === undefined) return '';
    const taxon = readTaxon(removed.taxon).common;
    return t`${taxon} taken out.`;
  });
  if (parts.length === 0 && Object.keys(fields).length > 0) return t`The tally as a whole changed.`;
  return parts.join(' ');
}

import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { useAnnounce } from '../ui/announcer.js';

/**
 * Puts a table on the clipboard. Browsers allow it only on a secure address; elsewhere the text is
 * shown, selected, to be copied by hand.
 */
export function CopyTable(props: {
  readonly label: string;
  readonly text: () => string;
}): ReactNode {
  const { label } = props;
  const announce = useAnnounce();
  const [state, setState] = useState<'ready' | 'copied' | 'by-hand'>('ready');
  const button = useRef<HTMLButtonElement>(null);

  async function copy(): Promise<void> {
    try {
      // Without a secure address there is no clipboard at all, whatever the types say.
      await navigator.clipboard.writeText(props.text());
      setState('copied');
      announce(t`${label}: copied. Paste it into a spreadsheet.`);
    } catch {
      setState('by-hand');
    }
  }

  const isCopied = state === 'copied';
  return (
    <div className="stack-tight not-printed">
      <p>
        <button
          ref={button}
          type="button"
          className="button"
          data-kind="quiet"
          aria-label={isCopied ? t`Copied: ${label}` : t`Copy table: ${label}`}
          onClick={() => void copy()}
        >
          {isCopied ? t`Copied` : t`Copy table`}
        </button>
      </p>
      {state === 'by-hand' ? (
        <CopyByHand
          text={props.text()}
          leave={() => {
            setState('ready');
            button.current?.focus();
          }}
        />
      ) : null}
    </div>
  );
}

function CopyByHand(props: { readonly text: string; readonly leave: () => void }): ReactNode {
  const area = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    area.current?.focus();
    area.current?.select();
  }, []);
  return (
    <label className="field copy-by-hand">
      <span className="hint">
        <Trans>
          This browser does not let the page copy. The text is selected: copy it with Ctrl+C (⌘C on
          a Mac), then paste it into a spreadsheet. Escape closes it.
        </Trans>
      </span>
      <textarea
        ref={area}
        readOnly
        rows={4}
        value={props.text}
        onKeyDown={(event) => {
          if (event.key === 'Escape') props.leave();
        }}
      />
    </label>
  );
}

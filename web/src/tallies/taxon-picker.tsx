import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useId, useMemo, useRef, useState, type ReactNode } from 'react';
import type { ReadTaxon } from '../ui/taxon.js';
import { foundTaxa, quickTaxa } from './local-taxa.js';

const noTaxa: readonly string[] = [];

/**
 * Finds a taxon: typed in any usual form (English, scientific, alpha code, a pair with a slash, a
 * group), or one tap on what was entered before or is common. Works without a connection.
 */
export function TaxonPicker(props: {
  readonly label: string;
  /** Taxa already in the tally, latest first. */
  readonly recent: readonly string[];
  /** Taxa of earlier years of the count, most expected first. */
  readonly expected?: readonly string[];
  readonly onPick: (taxon: ReadTaxon) => void;
}): ReactNode {
  const { expected = noTaxa } = props;
  const [text, setText] = useState('');
  const [active, setActive] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const listId = useId();
  const inputId = useId();
  const found = useMemo(() => foundTaxa(text, expected), [text, expected]);
  const quick = useMemo(() => quickTaxa(props.recent, expected), [props.recent, expected]);

  function pick(taxon: ReadTaxon): void {
    setText('');
    setActive(0);
    props.onPick(taxon);
  }

  const isOpen = text.trim() !== '';
  const shown = Math.min(active, found.length - 1);
  return (
    <div className="stack-tight">
      <div className="field">
        <label htmlFor={inputId}>{props.label}</label>
        <input
          ref={input}
          id={inputId}
          type="text"
          role="combobox"
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          placeholder={t`name, code, or pair`}
          aria-expanded={isOpen && found.length > 0}
          aria-controls={listId}
          aria-autocomplete="list"
          aria-activedescendant={isOpen && shown >= 0 ? `${listId}-${shown}` : undefined}
          value={text}
          onChange={(event) => {
            setText(event.target.value);
            setActive(0);
          }}
          onKeyDown={(event) => {
            if (event.key === 'ArrowDown') setActive(Math.min(shown + 1, found.length - 1));
            else if (event.key === 'ArrowUp') setActive(Math.max(shown - 1, 0));
            else if (event.key === 'Enter') {
              const taxon = found[shown];
              if (taxon !== undefined) pick(taxon);
            } else if (event.key === 'Escape') setText('');
            else return;
            event.preventDefault();
          }}
        />
      </div>
      <ul
        id={listId}
        role="listbox"
        aria-label={t`Taxa found`}
        className="plain-list taxon-list"
        hidden={!isOpen || found.length === 0}
      >
        {found.map((taxon, index) => (
          // The keyboard works through the text field (aria-activedescendant); this is for the finger.
          <li
            key={taxon.name}
            id={`${listId}-${index}`}
            role="option"
            aria-selected={index === shown}
            onClick={() => pick(taxon)}
          >
            <span>{taxon.common}</span> <span className="taxon soft">{taxon.name}</span>
          </li>
        ))}
      </ul>
      {isOpen && found.length === 0 ? (
        <p role="status" className="soft">
          <Trans>
            No taxon fits “{text}”. Try part of the English or scientific name, or a group such as
            “duck sp.”
          </Trans>
        </p>
      ) : null}
      {isOpen ? null : (
        <ul className="plain-list quick-taxa" aria-label={t`Recent and expected taxa`}>
          {quick.map((taxon) => (
            <li key={taxon.name}>
              <button type="button" className="button" onClick={() => pick(taxon)}>
                {taxon.common}
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

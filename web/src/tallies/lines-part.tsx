import { useState, type ReactNode } from 'react';
import { useAnnounce } from '../ui/announcer.js';
import type { DraftFault } from './draft-faults.js';
import { emptyLine, withLine, withoutLine, type Draft, type DraftLine } from './draft.js';
import { LineEditor } from './line-editor.js';
import { detailWords, quantityWords } from './line-words.js';
import { readTaxon } from '../ui/taxon.js';
import { TaxonPicker } from './taxon-picker.js';

/** The lines of a tally: pick a taxon, give its number, go on. The newest stands on top. */
export function LinesPart(props: {
  readonly draft: Draft;
  readonly sections: readonly { readonly id: string; readonly name: string }[];
  readonly faults: readonly DraftFault[];
  /** The line that is being written; nothing else is shown then. */
  readonly openId: string | null;
  readonly onOpen: (lineId: string | null) => void;
  readonly onChange: (draft: Draft) => void;
}): ReactNode {
  const { draft, faults, openId, onChange } = props;
  const [removed, setRemoved] = useState<DraftLine | null>(null);
  const announce = useAnnounce();
  const open = draft.lines.find(({ id }) => id === openId);
  const recent = [...draft.lines].reverse().map(({ taxon }) => taxon);

  if (open !== undefined) {
    return (
      <LineEditor
        key={open.id}
        line={open}
        sections={props.sections}
        faults={faults}
        recent={recent}
        onChange={(line) => onChange(withLine(draft, line))}
        onDone={() => {
          props.onOpen(null);
          announce(`${readTaxon(open.taxon).english}: ${quantityWords(open)}. Line kept.`);
        }}
        onRemove={() => {
          setRemoved(open);
          props.onOpen(null);
          onChange(withoutLine(draft, open.id));
          announce('Line removed.');
        }}
      />
    );
  }
  return (
    <section className="stack" aria-labelledby="lines-heading">
      <h2 id="lines-heading">What did you see?</h2>
      <TaxonPicker
        label="Add a line"
        recent={recent}
        onPick={(taxon) => {
          const line = emptyLine(taxon.name, draft.lines.at(-1));
          setRemoved(null);
          onChange(withLine(draft, line));
          props.onOpen(line.id);
        }}
      />
      {removed === null ? null : (
        <p className="row">
          <span>{readTaxon(removed.taxon).english} was removed.</span>
          <button
            type="button"
            className="button"
            onClick={() => {
              onChange(withLine(draft, removed));
              setRemoved(null);
            }}
          >
            Put it back
          </button>
        </p>
      )}
      {draft.lines.length === 0 ? (
        <p className="soft">
          No lines yet. Pick the first bird above. If you saw none at all, send the tally without
          lines: that says so.
        </p>
      ) : (
        <ol className="plain-list tally-lines" reversed>
          {[...draft.lines].reverse().map((line) => (
            <LineItem
              key={line.id}
              line={line}
              faults={faults}
              onOpen={() => props.onOpen(line.id)}
            />
          ))}
        </ol>
      )}
    </section>
  );
}

function LineItem(props: {
  readonly line: DraftLine;
  readonly faults: readonly DraftFault[];
  readonly onOpen: () => void;
}): ReactNode {
  const { line } = props;
  const own = props.faults.filter(({ lineId }) => lineId === line.id);
  const details = detailWords(line);
  return (
    <li data-at-fault={own.length > 0}>
      <button type="button" className="tally-line" onClick={props.onOpen}>
        <span>
          {readTaxon(line.taxon).english}
          {details === '' ? null : <span className="soft small tally-line-details">{details}</span>}
        </span>
        <span className="number">{quantityWords(line)}</span>
        <span className="for-readers">. Change this line</span>
      </button>
      {own.map((fault) => (
        <p key={fault.sentence} className="field-fault">
          {fault.sentence}
        </p>
      ))}
    </li>
  );
}

import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useCallback, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { useAnnounce } from '../ui/announcer.js';
import { readTaxon } from '../ui/taxon.js';
import { useQuietAnnounce } from '../ui/use-quiet-announce.js';
import { stepped } from './count-keys.js';
import type { DraftFault } from './draft-faults.js';
import { emptyLine, wholeNumber, withLine, withoutLine, type DraftLine } from './draft.js';
import { editedLine, type ChangeLine } from './edited-line.js';
import { LineEditor } from './line-editor.js';
import { LineItems } from './line-item.js';
import { quantityWords } from './line-words.js';
import type { Place } from './place.js';
import { TaxonPicker } from './taxon-picker.js';
import type { UndoProps } from './undo-buttons.js';
import type { ChangeDraft } from './use-draft.js';

/** As many of the last taxa as the buttons have room for. */
const MOST_RECENT = 10;
/** About as many lines as a screen shows twice over. */
const PIECE = 20;
const noFaultsAtAll: ReadonlyMap<string, readonly DraftFault[]> = new Map();

/**
 * The lines of a tally: pick a taxon, give its number, go on; the newest stands on top. A tap beside
 * a line adds to it without opening it.
 */
export function LinesPart(props: {
  readonly undo: UndoProps;
  readonly sections: readonly { readonly id: string; readonly name: string }[];
  readonly place: Place;
  /** Taxa of earlier years, most expected first. */
  readonly expected: readonly string[];
  readonly faults: readonly DraftFault[];
  /** The clock time to stamp on what is counted now, if any. */
  readonly stamp: () => string | null;
  /** The line that is being written; nothing else is shown then. */
  readonly openId: string | null;
  readonly onOpen: (lineId: string | null) => void;
  /** The picker lies at the bottom of the screen, within reach of a thumb. */
  readonly isAdding: boolean;
  readonly onAdding: (isAdding: boolean) => void;
  readonly change: ChangeDraft;
}): ReactNode {
  const { faults, openId, onOpen, onAdding, change, stamp } = props;
  const { draft } = props.undo;
  const { lines } = draft;
  const [tappedId, setTapped] = useState<string | null>(null);
  const announce = useAnnounce();
  const open = lines.find(({ id }) => id === openId);
  const recent = useRecent(lines);
  const watched = open ?? lines.find(({ id }) => id === tappedId);
  useQuietAnnounce(
    watched === undefined ? null : `${readTaxon(watched.taxon).common}: ${quantityWords(watched)}`,
  );

  const changeLine = useCallback<ChangeLine>(
    (lineId, fields, field) => {
      const now = stamp();
      change(
        (last) => editedLine(last, lineId, fields, now),
        field === undefined ? undefined : `${lineId}.${field}`,
      );
    },
    [change, stamp],
  );
  const tap = useCallback(
    (lineId: string, step: number) => {
      const now = stamp();
      setTapped(lineId);
      change((last) => {
        const line = last.lines.find(({ id }) => id === lineId);
        if (line === undefined) return last;
        return editedLine(last, lineId, { number: stepped(wholeNumber(line.number), step) }, now);
      });
    },
    [change, stamp],
  );
  const faultsOf = useMemo(() => {
    if (faults.length === 0) return noFaultsAtAll;
    const found = new Map<string, DraftFault[]>();
    for (const fault of faults) {
      if (fault.lineId === null) continue;
      found.set(fault.lineId, [...(found.get(fault.lineId) ?? []), fault]);
    }
    return found;
  }, [faults]);

  if (open !== undefined) {
    return (
      <LineEditor
        key={open.id}
        line={open}
        sections={props.sections}
        place={props.place}
        isStamping={stamp() !== null}
        faults={faults}
        recent={recent}
        expected={props.expected}
        undo={props.undo}
        onChange={changeLine}
        onDone={() => {
          onOpen(null);
          const taxon = readTaxon(open.taxon).common;
          const number = quantityWords(open);
          announce(t`${taxon}: ${number}. Line kept.`);
        }}
        onRemove={() => {
          onOpen(null);
          change((last) => withoutLine(last, open.id));
          announce(t`Line removed. Undo puts it back.`);
        }}
      />
    );
  }
  return (
    <section className="stack" aria-labelledby="lines-heading">
      <h2 id="lines-heading">
        <Trans>What did you see?</Trans>
      </h2>
      <Docked isDocked={props.isAdding} onClose={() => onAdding(false)}>
        <TaxonPicker
          label={t`Add a line`}
          recent={recent}
          expected={props.expected}
          onPick={(taxon) => {
            const line = emptyLine(taxon.name, lines.at(-1));
            change((last) => withLine(last, line));
            onAdding(false);
            onOpen(line.id);
          }}
        />
      </Docked>
      {lines.length === 0 ? (
        <p className="soft">
          <Trans>
            No lines yet. Pick the first bird above. If you saw none at all, send the tally without
            lines: that says so.
          </Trans>
        </p>
      ) : (
        <ol className="plain-list tally-lines" reversed>
          {piecesOf(lines)
            .reverse()
            .map((piece) => (
              <LineItems
                key={piece[0]?.id}
                lines={piece}
                faultsOf={faultsOf}
                onOpen={onOpen}
                onTap={tap}
              />
            ))}
        </ol>
      )}
    </section>
  );
}

/** The lines in pieces, the same ones in a piece however many come after it. */
function piecesOf(lines: readonly DraftLine[]): (readonly DraftLine[])[] {
  const pieces: (readonly DraftLine[])[] = [];
  for (let from = 0; from < lines.length; from += PIECE) {
    pieces.push(lines.slice(from, from + PIECE));
  }
  return pieces;
}

/** The last taxa, each once, latest first. The same list until another taxon comes in. */
function useRecent(lines: readonly DraftLine[]): readonly string[] {
  const taxa = new Set<string>();
  for (let index = lines.length - 1; index >= 0 && taxa.size < MOST_RECENT; index -= 1) {
    const line = lines[index];
    if (line !== undefined) taxa.add(line.taxon);
  }
  const key = JSON.stringify([...taxa]);
  return useMemo(() => JSON.parse(key) as readonly string[], [key]);
}

/** Its content in its place, or at the bottom of the screen with the focus in it. */
function Docked(props: {
  readonly isDocked: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
}): ReactNode {
  const { isDocked, onClose } = props;
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // A button, not the text field: that would bring the keyboard up over everything.
    if (isDocked) box.current?.querySelector<HTMLElement>('.quick-taxa button')?.focus();
  }, [isDocked]);
  return (
    <div
      ref={box}
      className="picker-place stack-tight"
      data-docked={isDocked}
      onKeyDown={(event) => {
        if (isDocked && event.key === 'Escape') onClose();
      }}
    >
      {props.children}
      {isDocked ? (
        <button type="button" className="button" onClick={onClose}>
          <Trans>Back to the lines</Trans>
        </button>
      ) : null}
    </div>
  );
}

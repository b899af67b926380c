import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type {
  FieldMark,
  FieldMarkKey,
  MarkState,
} from '../../../server/core/marks/field-mark-key.js';
import type { WeighedMarks } from '../../../server/core/marks/weigh-marks.js';
import { taxonName } from '../../../server/core/taxa/taxon-name.js';
import { commonName } from '../ui/taxon.js';
import { markText } from './marks-words.js';
import { useAnnounce } from '../ui/announcer.js';
import { sentenceCase } from '../ui/words.js';
import type { DraftLine } from './draft.js';
import {
  birdsOfLine,
  keysOfLine,
  marksInForce,
  statesFor,
  weighedMarks,
  withMark,
} from './marks-seen.js';
import { fitWords, outcomeWords, seenMarkWords } from './marks-words.js';

/**
 * Field marks of a line whose birds have look-alikes: tick what was seen, and read what that leaves. A
 * name that says more than the marks do is asked about once, and stays if the observer says so.
 */
export function MarksPart(props: {
  readonly line: DraftLine;
  readonly onChange: (line: DraftLine) => void;
}): ReactNode {
  const { line, onChange } = props;
  const keys = keysOfLine(line);
  const weighed = weighedMarks(line);
  const named = birdsOfLine(line)?.candidates;
  if (keys.length === 0 || weighed === null || named === undefined) return null;
  const reasons = weighed.dependable.map(seenMarkWords).join('. ');
  return (
    <details open={line.marks.length > 0}>
      <summary>
        <Trans>Field marks seen</Trans>
      </summary>
      <div className="stack">
        {keys.map((key) => (
          <KeyMarks
            key={key.group}
            line={line}
            markKey={key}
            withName={keys.length > 1}
            onChange={onChange}
          />
        ))}
        <div role="status" className="stack-tight">
          <p className="sentence">{outcomeWords(named, weighed)}</p>
          {weighed.dependable.length < 2 ? null : (
            <p className="small">
              <Trans>Because: {reasons}.</Trans>
            </p>
          )}
        </div>
        <Question line={line} weighed={weighed} onChange={onChange} />
      </div>
    </details>
  );
}

/** The marks of one key that the line's birds can show, each with its states and "not seen". */
function KeyMarks(props: {
  readonly line: DraftLine;
  readonly markKey: FieldMarkKey;
  readonly withName: boolean;
  readonly onChange: (line: DraftLine) => void;
}): ReactNode {
  const { line, markKey, onChange } = props;
  const seen = marksInForce(line);
  const marks = markKey.marks.map((mark) => ({ mark, states: statesFor(line, markKey, mark) }));
  return (
    <>
      {props.withName ? <h3>{sentenceCase(markText(markKey.group))}</h3> : null}
      {marks
        .filter(({ states }) => states.length > 0)
        .map(({ mark, states }) => (
          <MarkStates
            key={mark.name}
            mark={mark}
            states={states}
            seen={seen.find((each) => each.mark === mark.name)?.state ?? ''}
            onSeen={(state) => onChange(withMark(line, mark.name, state))}
          />
        ))}
      <p className="hint">
        {sentenceCase(markText(markKey.group))}: {markText(markKey.source)}.
      </p>
    </>
  );
}

/** One mark: a tap on a state ticks it, another takes it back; what it fits is said at once. */
function MarkStates(props: {
  readonly mark: FieldMark;
  readonly states: readonly MarkState[];
  /** Name of the state that is ticked; `''` where none is. */
  readonly seen: string;
  readonly onSeen: (state: string) => void;
}): ReactNode {
  const { mark, states, seen } = props;
  const ticked = states.find(({ name }) => name === seen);
  const never = mark.dependability === 'undependable';
  return (
    <fieldset className="field">
      <legend>{sentenceCase(markText(mark.name))}</legend>
      <div className="choice-grid">
        {states.map(({ name }) => (
          <button
            key={name}
            type="button"
            className="button mark-state"
            aria-pressed={name === seen}
            onClick={() => props.onSeen(name === seen ? '' : name)}
          >
            {markText(name)}
          </button>
        ))}
      </div>
      <p className="hint">
        {ticked === undefined ? null : <Trans>Fits {fitWords(mark, ticked)}.</Trans>}{' '}
        {never ? <Trans>Never decides alone.</Trans> : null}{' '}
        <Trans>Can mislead: {markText(mark.fails)}.</Trans>
      </p>
    </fieldset>
  );
}

/** Asked once: leave it at what the marks support, or keep the name. Nothing waits for an answer. */
function Question(props: {
  readonly line: DraftLine;
  readonly weighed: WeighedMarks;
  readonly onChange: (line: DraftLine) => void;
}): ReactNode {
  const { line, onChange } = props;
  const { outcome, supported } = props.weighed;
  const announce = useAnnounce();
  if (line.marksAnswered || (outcome !== 'coarser' && outcome !== 'contradicted')) return null;
  const named = birdsOfLine(line)?.candidates ?? [];
  const name = commonName(named);
  const instead = supported.length === 0 ? null : commonName(supported);
  return (
    <div
      className="notice stack-tight"
      data-kind="plain"
      role="group"
      aria-label={t`A question about the name`}
    >
      <p>
        {instead === null
          ? t`Would you look at the marks once more? The name stays as it is either way.`
          : t`Would you rather leave these birds as ${instead}? If something else you saw shows the species, keep the name.`}
      </p>
      <div className="choice-row">
        {instead === null ? null : (
          <button
            type="button"
            className="button"
            onClick={() => {
              onChange({ ...line, taxon: taxonName(supported), marksAnswered: true });
              announce(t`The line is now ${instead}.`);
            }}
          >
            <Trans>Leave it as {instead}</Trans>
          </button>
        )}
        <button
          type="button"
          className="button"
          onClick={() => {
            onChange({ ...line, marksAnswered: true });
            announce(t`The line stays ${name}.`);
          }}
        >
          <Trans>Keep {name}</Trans>
        </button>
      </div>
    </div>
  );
}

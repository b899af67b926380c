import type { ReactNode } from 'react';
import type { FieldMarkKey } from '../../../server/core/marks/field-mark-key.js';
import type { WeighedMarks } from '../../../server/core/marks/weigh-marks.js';
import { englishName, taxonName } from '../../../server/core/taxa/taxon-name.js';
import { useAnnounce } from '../ui/announcer.js';
import { sentenceCase } from '../ui/words.js';
import { Choice } from './choice.js';
import type { DraftLine } from './draft.js';
import {
  birdsOfLine,
  keysOfLine,
  marksInForce,
  statesFor,
  weighedMarks,
  withMark,
} from './marks-seen.js';
import { outcomeWords, seenMarkWords } from './marks-words.js';

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
  return (
    <details open={line.marks.length > 0}>
      <summary>Field marks seen</summary>
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
          <Reasons weighed={weighed} />
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
      {props.withName ? <h3>{sentenceCase(markKey.group)}</h3> : null}
      {marks
        .filter(({ states }) => states.length > 0)
        .map(({ mark, states }) => (
          <div key={mark.name} className="stack-tight">
            <Choice
              legend={sentenceCase(mark.name)}
              value={seen.find((each) => each.mark === mark.name)?.state ?? ''}
              options={[
                ...states.map(({ name }) => ({ value: name, label: name })),
                { value: '', label: 'not seen' },
              ]}
              onChange={(state) => onChange(withMark(line, mark.name, state))}
            />
            <p className="hint">
              {mark.dependability === 'undependable' ? 'Never decides alone. ' : ''}
              Can mislead: {mark.fails}.
            </p>
          </div>
        ))}
    </>
  );
}

/** Why: each mark with the species that have it. */
function Reasons(props: { readonly weighed: WeighedMarks }): ReactNode {
  const { dependable, undependable } = props.weighed;
  if (dependable.length + undependable.length === 0) return null;
  return (
    <ul className="stack-tight small">
      {dependable.map((seen) => (
        <li key={seen.mark.name}>{sentenceCase(seenMarkWords(seen))}</li>
      ))}
      {undependable.map((seen) => (
        <li key={seen.mark.name} className="soft">
          {sentenceCase(seenMarkWords(seen))} – not counted, since it misleads too often
        </li>
      ))}
    </ul>
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
  const instead = supported.length === 0 ? null : englishName(supported);
  return (
    <div
      className="notice stack-tight"
      data-kind="plain"
      role="group"
      aria-label="A question about the name"
    >
      <p>
        {instead === null
          ? 'Would you look at the marks once more? The name stays as it is either way.'
          : `Would you rather leave these birds as ${instead}? If something else you saw shows the species, keep the name.`}
      </p>
      <div className="choice-row">
        {instead === null ? null : (
          <button
            type="button"
            className="button"
            onClick={() => {
              onChange({ ...line, taxon: taxonName(supported), marksAnswered: true });
              announce(`The line is now ${instead}.`);
            }}
          >
            Leave it as {instead}
          </button>
        )}
        <button
          type="button"
          className="button"
          onClick={() => {
            onChange({ ...line, marksAnswered: true });
            announce(`The line stays ${englishName(named)}.`);
          }}
        >
          Keep {englishName(named)}
        </button>
      </div>
    </div>
  );
}

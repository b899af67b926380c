import type { ReactNode } from 'react';
import { Notice } from '../ui/notice.js';
import { conditionsWords } from '../ui/conditions-words.js';
import { birds, listed, sentenceCase } from '../ui/words.js';
import { repeatedTaxa, runningTotal, type Draft } from './draft.js';
import { detailWords, quantityWords } from './line-words.js';
import type { Assignment, OwnPart } from './own-part.js';
import { conditionsInput } from './tally-input.js';
import { readTaxon } from '../ui/taxon.js';

/** A last look: what the tally says in a sentence, its lines, and what may be a slip. */
export function ReviewStep(props: {
  readonly draft: Draft;
  readonly count: OwnPart;
  readonly assignment: Assignment;
  readonly isSending: boolean;
  readonly onBack: () => void;
  readonly onSend: () => void;
}): ReactNode {
  const { draft, count, assignment } = props;
  const total = runningTotal(draft);
  const repeated = repeatedTaxa(draft);
  const helpers = count.people.filter(({ person }) => draft.party.includes(person.id));
  const place = listed(assignment.sections.map(({ name }) => name));
  const seen = draft.seenAll
    ? `saw all of ${place}`
    : `saw about ${draft.seenPercent} % of ${place}`;
  const noted = conditionsInput(draft.conditions);
  const conditions = noted === null ? '' : conditionsWords(noted);
  const looked =
    draft.scope === 'taxa'
      ? `for ${listed(draft.scopeTaxa.map((taxon) => readTaxon(taxon).common))}`
      : draft.scope === 'waterfowl'
        ? 'for waterfowl'
        : 'for all waterbirds';
  return (
    <div className="stack">
      <h2>Look it over</h2>
      <p className="sentence">
        From {draft.start} to {draft.end} you {seen}, looking {looked}: {birds(total.using)}{' '}
        {total.using === 1 ? 'bird' : 'birds'}
        {total.flyingThrough > 0 ? `, and ${birds(total.flyingThrough)} flying through` : ''}.
      </p>
      {conditions === '' ? null : <p>{sentenceCase(conditions)}.</p>}
      {helpers.length === 0 ? null : (
        <p>With {listed(helpers.map(({ person }) => person.name))}.</p>
      )}
      {draft.lines.length === 0 ? (
        <Notice kind="caution" title="The tally has no lines.">
          <p>Sent like this it says that you looked and saw no bird at all.</p>
        </Notice>
      ) : (
        <table>
          <caption className="for-readers">The lines of this tally</caption>
          <thead>
            <tr>
              <th scope="col">Taxon</th>
              <th scope="col" className="number">
                Birds
              </th>
            </tr>
          </thead>
          <tbody>
            {draft.lines.map((line) => (
              <tr key={line.id}>
                <td>
                  {readTaxon(line.taxon).common}
                  <span className="soft small tally-line-details">{detailWords(line)}</span>
                </td>
                <td className="number">{quantityWords(line)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {repeated.length === 0 ? null : (
        <Notice
          kind="caution"
          title={`Twice in the list: ${listed(repeated.map((taxon) => readTaxon(taxon).common))}.`}
        >
          <p>
            Two flocks of one taxon are fine and are added up. If it is one flock, remove a line.
          </p>
        </Notice>
      )}
      <div className="tally-foot foot-acts">
        <button type="button" className="button" onClick={props.onBack} disabled={props.isSending}>
          Back
        </button>
        <button
          type="button"
          className="button"
          data-kind="main"
          onClick={props.onSend}
          disabled={props.isSending}
        >
          {props.isSending
            ? 'Sending …'
            : draft.replaces === null
              ? 'Send the tally'
              : 'Send the correction'}
        </button>
      </div>
    </div>
  );
}

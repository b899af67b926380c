import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { Notice } from '../ui/notice.js';
import { conditionsWords } from '../ui/conditions-words.js';
import { birds, listed, sentenceCase } from '../ui/words.js';
import { repeatedTaxa, runningTotal, type Draft } from './draft.js';
import { detailWords, quantityWords } from './line-words.js';
import type { Assignment, OwnPart } from './own-part.js';
import { conditionsInput } from './tally-input.js';
import { readTaxon } from '../ui/taxon.js';
import { countedBirds } from '../ui/counted.js';

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
  const { start, end, seenPercent } = draft;
  const party = listed(helpers.map(({ person }) => person.name));
  const soughtTaxa = listed(draft.scopeTaxa.map((taxon) => readTaxon(taxon).common));
  const twice = listed(repeated.map((taxon) => readTaxon(taxon).common));
  const onWater = countedBirds(total.using);
  const flying = birds(total.flyingThrough);
  const found = total.flyingThrough > 0 ? t`${onWater}, and ${flying} flying through` : onWater;
  const seen = draft.seenAll ? t`saw all of ${place}` : t`saw about ${seenPercent} % of ${place}`;
  const noted = conditionsInput(draft.conditions);
  const conditions = noted === null ? '' : conditionsWords(noted);
  const looked =
    draft.scope === 'taxa'
      ? t`for ${soughtTaxa}`
      : draft.scope === 'waterfowl'
        ? t`for waterfowl`
        : t`for all waterbirds`;
  return (
    <div className="stack">
      <h2>
        <Trans>Look it over</Trans>
      </h2>
      <p className="sentence">
        <Trans>
          From {start} to {end} you {seen}, looking {looked}: {found}.
        </Trans>
      </p>
      {conditions === '' ? null : <p>{sentenceCase(conditions)}.</p>}
      {helpers.length === 0 ? null : (
        <p>
          <Trans>With {party}.</Trans>
        </p>
      )}
      {draft.lines.length === 0 ? (
        <Notice kind="caution" title={t`The tally has no lines.`}>
          <p>
            <Trans>Sent like this it says that you looked and saw no bird at all.</Trans>
          </p>
        </Notice>
      ) : (
        <table>
          <caption className="for-readers">
            <Trans>The lines of this tally</Trans>
          </caption>
          <thead>
            <tr>
              <th scope="col">
                <Trans>Taxon</Trans>
              </th>
              <th scope="col" className="number">
                <Trans>Birds</Trans>
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
        <Notice kind="caution" title={t`Twice in the list: ${twice}.`}>
          <p>
            <Trans>
              Two flocks of one taxon are fine and are added up. If it is one flock, remove a line.
            </Trans>
          </p>
        </Notice>
      )}
      <div className="tally-foot foot-acts">
        <button type="button" className="button" onClick={props.onBack} disabled={props.isSending}>
          <Trans>Back</Trans>
        </button>
        <button
          type="button"
          className="button"
          data-kind="main"
          onClick={props.onSend}
          disabled={props.isSending}
        >
          {props.isSending
            ? t`Sending …`
            : draft.replaces === null
              ? t`Send the tally`
              : t`Send the correction`}
        </button>
      </div>
    </div>
  );
}

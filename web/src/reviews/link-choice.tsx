import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { LinkPartsFragment } from '../graphql/generated/graphql.js';
import { linkSentence, stateOf } from './link-words.js';

/** The links of a count as one choice: arrow keys go from one to the next. */
export function LinkChoice(props: {
  readonly links: readonly LinkPartsFragment[];
  readonly chosenId: string;
  readonly timeZone: string;
  readonly waitsForSecond: (linkId: string) => boolean;
  readonly onChoose: (linkId: string) => void;
}): ReactNode {
  return (
    <fieldset className="link-choice">
      <legend className="label">
        <Trans>Possible double counts</Trans>
      </legend>
      {props.links.map((link) => (
        <label key={link.id} className="link-option" data-chosen={link.id === props.chosenId}>
          <input
            type="radio"
            name="link"
            value={link.id}
            checked={link.id === props.chosenId}
            onChange={() => props.onChoose(link.id)}
          />
          <span>
            <span>{linkSentence(link, props.timeZone)}</span>
            <span className="soft small block">{stateOf(link, props.waitsForSecond(link.id))}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useMemo, useState, type ReactNode } from 'react';
import { useQuery } from 'urql';
import type { CountLinksQuery, LinkPartsFragment } from '../graphql/generated/graphql.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { useShortKeys, useShortKeysSetting } from '../ui/short-keys.js';
import { Skeleton } from '../ui/skeleton.js';
import { percent } from '../ui/words.js';
import { AskForm } from './ask-form.js';
import { LinkChoice } from './link-choice.js';
import { LinkDetails } from './link-details.js';
import { CountLinks } from './link-documents.js';
import { LinkRuling } from './link-ruling.js';
import { LinkView } from './link-view.js';
import { isRuled } from './link-words.js';
import { ofReviews } from './listed-disagreement.js';
import { ReviewFrame } from './review-frame.js';
import { RulingHistory } from './ruling-history.js';

type Count = CountLinksQuery['count'];

/** Possible double counts: two sightings in different sections that may be one flock. */
export function LinksPage(props: { readonly countId: string }): ReactNode {
  const [result, again] = useQuery({
    query: CountLinks,
    variables: { id: props.countId },
    context: ofReviews,
  });
  const [wanted, setWanted] = useState<string | null>(null);
  const count = result.data?.count;
  const links = useMemo(() => inOrder(count?.review.links ?? []), [count]);
  const chosen = links.find(({ id }) => id === wanted) ?? links[0];
  const reload = (): void => again({ requestPolicy: 'network-only' });
  return (
    <Page
      title={t`Double counts`}
      intro={t`Flocks that may be in two sections’ tallies. Nothing is taken off before you rule, unless the protocol says so.`}
    >
      <ReviewFrame
        countId={props.countId}
        act={
          result.data && chosen ? (
            <Acts
              key={chosen.id}
              data={result.data}
              links={links}
              link={chosen}
              onChoose={setWanted}
              onStale={reload}
            />
          ) : null
        }
      >
        <Answer
          result={result}
          skeleton={<Skeleton rows={14} label={t`Loading possible double counts.`} />}
          retry={reload}
        >
          {({ count: loaded }) => (
            <>
              {loaded.review.withheld.map((sentence) => (
                <p key={sentence} className="soft">
                  {sentence}
                </p>
              ))}
              {chosen ? (
                <Matter count={loaded} links={links} link={chosen} onChoose={setWanted} />
              ) : (
                <Notice kind="plain" title={t`No two sightings look like one flock.`}>
                  <p>
                    <Trans>
                      Every flock is counted where it was seen. There is nothing to do here.
                    </Trans>
                  </p>
                </Notice>
              )}
            </>
          )}
        </Answer>
      </ReviewFrame>
    </Page>
  );
}

/** Proposed ones first, then by birds. A ruling moves none of them, so that nothing jumps. */
function inOrder(links: readonly LinkPartsFragment[]): readonly LinkPartsFragment[] {
  return [...links].sort(
    (one, other) =>
      Number(other.proposed) - Number(one.proposed) ||
      other.birds - one.birds ||
      (one.id < other.id ? -1 : 1),
  );
}

interface Chosen {
  readonly links: readonly LinkPartsFragment[];
  readonly link: LinkPartsFragment;
  readonly onChoose: (linkId: string) => void;
}

function Matter(props: Chosen & { readonly count: Count }): ReactNode {
  const { count, links, link, onChoose } = props;
  const [keysSetting] = useShortKeysSetting();
  const at = links.indexOf(link);
  const goTo = (index: number): (() => void) | undefined => {
    const found = links[index];
    return found && (() => onChoose(found.id));
  };
  useShortKeys(keysSetting === 'on', {
    j: goTo(at + 1),
    k: goTo(at - 1),
    r: () => document.getElementById('ruling-heading')?.focus(),
  });
  return (
    <>
      <p className="sentence">{openSentence(links, count.protocol.linkThreshold)}</p>
      <LinkChoice
        links={links}
        chosenId={link.id}
        timeZone={count.timeZone}
        waitsForSecond={(id) => standingOn(count, id)?.state === 'NEEDS_SECOND'}
        onChoose={onChoose}
      />
      {keysSetting === 'on' ? (
        <p className="small keys-hint not-printed">
          <Trans>
            <kbd>j</kbd> next, <kbd>k</kbd> previous, <kbd>r</kbd> rule
          </Trans>
        </p>
      ) : null}
      <LinkView link={link} links={links} count={count} onChoose={onChoose} />
      <section className="panel stack" aria-labelledby="sightings-heading">
        <h2 id="sightings-heading">
          <Trans>The two sightings</Trans>
        </h2>
        <LinkDetails link={link} links={links} timeZone={count.timeZone} />
      </section>
    </>
  );
}

/** How many links are left to rule on, and how many of these are likely enough to be proposed. */
function openSentence(links: readonly LinkPartsFragment[], linkThreshold: number): string {
  const openOnes = links.filter((one) => !isRuled(one));
  const [open, proposed] = [openOnes.length, openOnes.filter((one) => one.proposed).length];
  const threshold = percent(linkThreshold);
  return open === 0
    ? t`All possible double counts are ruled on.`
    : t`${plural(open, { one: '# possible double count is open', other: '# possible double counts are open' })}; ${plural(proposed, { one: '# of them reaches', other: '# of them reach' })} the protocol’s ${threshold}.`;
}

/** The ruling on a link that is applied, or would be if seconded or given on what is there now. */
function standingOn(count: Count, linkId: string) {
  return (
    count.review.rulings.find(
      ({ target, state }) =>
        target.kind === 'link' &&
        target.link === linkId &&
        (state === 'APPLIED' || state === 'NEEDS_SECOND' || state === 'STALE'),
    ) ?? null
  );
}

function Acts(
  props: Chosen & { readonly data: CountLinksQuery; readonly onStale: () => void },
): ReactNode {
  const { link, links, onChoose } = props;
  const { count, me } = props.data;
  const { review, may, timeZone } = count;
  const standing = standingOn(count, link.id);
  const next = links.find(
    (one) => one.id !== link.id && !isRuled(one) && standingOn(count, one.id) === null,
  );
  const target = { kind: 'link', link: link.id };
  return (
    <>
      <LinkRuling
        key={standing?.id ?? 'none'}
        link={link}
        countId={count.id}
        inputHash={review.inputHash}
        standing={standing}
        mayRule={may.includes('RULE')}
        onNext={next ? () => onChoose(next.id) : null}
        onStale={props.onStale}
      />
      <RulingHistory
        rulings={review.rulings}
        disagreement={{ proposals: [{ target }], lines: [] }}
        meId={me?.id ?? null}
        maySecond={may.includes('SECOND')}
        mayRule={may.includes('RULE')}
        timeZone={timeZone}
      />
      <AskForm
        countId={count.id}
        disagreement={askedAbout(count, link)}
        mayAsk={may.includes('ASK')}
        timeZone={timeZone}
      />
    </>
  );
}

/** Links below the threshold are no disagreements: questions about them go about whole tallies. */
function askedAbout(count: Count, link: LinkPartsFragment) {
  const disagreement = count.review.disagreements.find((one) => one.link?.id === link.id);
  const observers = [...link.first.observers, ...link.second.observers].filter(
    // Somebody may have counted both.
    ({ id }, index, all) => all.findIndex((one) => one.id === id) === index,
  );
  const ids = new Set(observers.map(({ id }) => id));
  return {
    id: disagreement?.id ?? null,
    observers,
    queries:
      disagreement?.queries ??
      count.queries.filter(({ disagreementId, to }) => !disagreementId && ids.has(to.id)),
  };
}

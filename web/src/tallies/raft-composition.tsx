import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import type { RaftComposition, RaftShare } from '../../../server/core/raft/compose-raft.js';
import { moreSamplesFor } from '../../../server/core/raft/more-samples.js';
import type { RaftLine } from '../../../server/core/raft/raft-lines.js';
import { taxonName } from '../../../server/core/taxa/taxon-name.js';
import { commonName } from '../ui/taxon.js';
import { Extent } from '../ui/extent.js';
import { birds, listed, percent } from '../ui/words.js';
import { Choice } from './choice.js';
import { countedBirds } from '../ui/counted.js';

/** Half widths to choose from, in hundredths of the raft. */
const widths = ['5', '10', '15'] as const;
type Width = (typeof widths)[number];

/** What the raft is made of so far, how sure that is, and what would make it surer. */
export function RaftCompositionPart(props: {
  readonly composition: RaftComposition;
  /** In birds of the raft; `null` while it has no total. */
  readonly lines: readonly RaftLine[] | null;
}): ReactNode {
  const { composition, lines } = props;
  const [width, setWidth] = useState<Width>('10');
  const full = Math.max(1, ...(lines ?? []).map(({ high }) => high));
  const estimates = estimatesInWords(composition);
  return (
    <section className="stack" aria-labelledby="raft-composition">
      <h3 id="raft-composition">
        <Trans>What the raft is made of</Trans>
      </h3>
      <p className="sentence">{compositionSentence(composition)}</p>
      <ul className="plain-list raft-shares">
        {composition.identifications.map((each, at) => (
          <RaftShareItem
            key={taxonName(each.candidates)}
            share={each}
            line={lines?.[at]}
            full={full}
          />
        ))}
      </ul>
      <p className="small soft">
        {lines === null ? (
          <Trans>Dot: the number. Whisker: 95 % interval, all on one scale from 0.</Trans>
        ) : (
          <Trans>
            Dot: the number. Whisker: 95 % interval, all on one scale from 0; the error of the
            raft’s total is in it too.
          </Trans>
        )}
      </p>
      <Choice
        legend={t`How sure would you like to be of each share?`}
        isShort
        value={width}
        options={widths.map((value) => ({ value, label: `± ${value} %` }))}
        onChange={setWidth}
      />
      <p role="status">{moreSentence(composition, width)}</p>
      {composition.estimates.length === 0 ? null : (
        <details>
          <summary>
            <Trans>If the birds left at a pair or group are shared out</Trans>
          </summary>
          <p>
            <Trans>
              By what was identified it would be {estimates}. An estimate only: it takes it that
              birds were left for no reason that has to do with their species. The tally keeps them
              at their pair or group.
            </Trans>
          </p>
        </details>
      )}
    </section>
  );
}

/** One identification: in birds once the raft has a total, in hundredths of the raft before. */
function RaftShareItem(props: {
  readonly share: RaftShare;
  readonly line: RaftLine | undefined;
  /** Right end of the scale, in birds. */
  readonly full: number;
}): ReactNode {
  const { share, line } = props;
  const scanned = birds(share.scanned);
  const hundredths = (part: number): number => Math.round(part * 100);
  return (
    <li>
      <span>{commonName(share.candidates)}</span>
      <span className="number">
        {line === undefined ? percent(share.share) : birds(line.number)}
      </span>
      {line === undefined ? (
        <Extent
          number={hundredths(share.share)}
          low={hundredths(share.low)}
          high={hundredths(share.high)}
          full={100}
        />
      ) : (
        <Extent number={line.number} low={line.low} high={line.high} full={props.full} />
      )}
      <span className="small soft">
        {line === undefined
          ? percentages(String(hundredths(share.low)), String(hundredths(share.high)))
          : fromTo(birds(line.low), birds(line.high))}
        , <Trans>{scanned} scanned</Trans>
      </span>
    </li>
  );
}

/** `Of 160 birds in 4 samples, 62 % were Greater Scaup and 38 % Lesser Scaup.` and what patches say. */
function compositionSentence(composition: RaftComposition): string {
  const { samples, scanned, identifications } = composition;
  const parts = [...identifications]
    .sort((one, other) => other.scanned - one.scanned)
    .map(({ share, candidates }) => `${percent(share)} ${commonName(candidates)}`);
  const birdsScanned = countedBirds(scanned);
  const composed = listed(parts);
  const shares = t`Of ${birdsScanned} in ${plural(samples, { one: '# sample', other: '# samples' })}: ${composed}.`;
  if (samples === 1) {
    return t`${shares} One sample cannot tell how evenly the raft is mixed; take another from another part.`;
  }
  return composition.alikeness > 0.1
    ? t`${shares} The samples differ a good deal: the raft is patchy, so more samples from other parts help more than larger ones.`
    : shares;
}

function moreSentence(composition: RaftComposition, width: Width): string {
  const more = moreSamplesFor(composition, Number(width) / 100);
  if (more === 0) return t`Every share is known to within ± ${width} % of the raft already.`;
  if (more === null) {
    return t`Even 200 more samples would not narrow every share to ± ${width} % of the raft.`;
  }
  return plural(more, {
    one: `# more sample like these would narrow every share to ± ${width} % of the raft.`,
    other: `# more samples like these would narrow every share to ± ${width} % of the raft.`,
  });
}

function estimatesInWords({ estimates }: RaftComposition): string {
  return listed(
    estimates.map(({ species, share, low, high }) => {
      const interval = fromTo(percent(low), percent(high));
      return `${commonName([species])} ${percent(share)} (${interval})`;
    }),
  );
}

function fromTo(low: string, high: string): string {
  return t`${low} to ${high}`;
}

function percentages(low: string, high: string): string {
  return t`${low} to ${high} %`;
}

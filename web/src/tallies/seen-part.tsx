import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { shareCovered } from '../../../server/core/math/share-covered.js';
import type { Position } from '../../../server/core/model/snapshot.js';
import { useAnnounce } from '../ui/announcer.js';
import type { Draft } from './draft.js';
import { NumberField } from './number-field.js';
import type { Place } from './place.js';
import { SectionMap } from './section-map.js';
import type { SetDraft } from './use-draft.js';

/** How much of the section was seen: as a share, or drawn on its map, which gives the share. */
export function SeenPart(props: {
  readonly draft: Draft;
  readonly place: Place;
  readonly fault: string | undefined;
  readonly set: SetDraft;
}): ReactNode {
  const { draft, place, set } = props;
  const [isDrawing, setDrawing] = useState(draft.seenArea.length > 0);
  const announce = useAnnounce();
  const outline = draft.seenArea;
  const share = shareOf(outline, place);

  function draw(corners: readonly Position[]): void {
    const drawn = shareOf(corners, place);
    set({ seenArea: corners, ...(drawn === null ? {} : { seenPercent: percentOf(drawn) }) });
    if (drawn !== null) announce(outlineWords(drawn));
  }

  return (
    <div className="stack">
      <NumberField
        label={t`About how much, in per cent`}
        hint={t`Fog, ice, boats or a point of land in the way: a partial tally is a lower bound, and still worth sending.`}
        fault={props.fault}
        value={draft.seenPercent}
        onChange={(value) => set({ seenPercent: value, seenArea: [] }, 'seenPercent')}
      />
      <div>
        <button
          type="button"
          className="button"
          aria-expanded={isDrawing}
          onClick={() => setDrawing(!isDrawing)}
        >
          {isDrawing ? t`Put the map away` : t`Draw it on the map instead`}
        </button>
      </div>
      {isDrawing ? (
        <div className="stack-tight">
          <SectionMap
            label={t`Map of your section, north up. Tap the corners of what you saw, one after another.`}
            place={place}
            outline={outline}
            onTap={(corner) => {
              draw([...outline, rounded(corner)]);
              const corners = outline.length + 1;
              if (corners < 3) announce(t`Corner ${corners} set.`);
            }}
          />
          <p className="hint">
            {share === null
              ? t`Tap the corners of what you saw, one after another, all the way round. What lies outside the section does not matter.`
              : outlineWords(share)}
          </p>
          <div className="row">
            <button
              type="button"
              className="button"
              disabled={outline.length === 0}
              onClick={() => draw(outline.slice(0, -1))}
            >
              <Trans>Take the last corner back</Trans>
            </button>
            <button
              type="button"
              className="button"
              disabled={outline.length === 0}
              onClick={() => draw([])}
            >
              <Trans>Begin the outline anew</Trans>
            </button>
          </div>
        </div>
      ) : null}
    </div>
  );
}

/** To about a tenth of a metre: nobody taps more finely. */
function rounded([lon, lat]: Position): Position {
  return [Number(lon.toFixed(6)), Number(lat.toFixed(6))];
}

/** `null` before there is an outline. */
function shareOf(outline: readonly Position[], place: Place): number | null {
  if (outline.length < 3) return null;
  return shareCovered(
    place.sections.map(({ polygon }) => polygon),
    [outline],
  );
}

/** To a tenth of a per cent, and empty where it says all or nothing: that is not a part. */
function percentOf(share: number): string {
  const percent = Math.round(share * 1000) / 10;
  return percent > 0 && percent < 100 ? String(percent) : '';
}

function outlineWords(share: number): string {
  const percent = percentOf(share);
  if (percent !== '') return t`The outline covers ${percent} % of the section.`;
  return share > 0.5
    ? t`The outline covers the whole section: choose “All of it” above.`
    : t`The outline does not touch the section.`;
}

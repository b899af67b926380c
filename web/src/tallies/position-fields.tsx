import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { geodesicFrom } from '../../../server/core/math/geodesic-direct.js';
import type { Position } from '../../../server/core/model/snapshot.js';
import { useAnnounce } from '../ui/announcer.js';
import { TextField } from '../ui/text-field.js';
import { birds } from '../ui/words.js';
import type { DraftLine } from './draft.js';
import { NumberField } from './number-field.js';
import type { Place } from './place.js';
import { fromNamedThing } from './place-words.js';
import { SectionMap } from './section-map.js';

/** About a metre; a phone knows no better. */
const DECIMALS = 5;
/** Metres; nobody sees what a flock is from farther off. */
const FARTHEST_SEEN = 30_000;

/** Where the flock was: by a tap on the map, by bearing and distance, from the phone, or typed. */
export function PositionFields(props: {
  readonly line: DraftLine;
  readonly place: Place;
  readonly fault: (field: string) => string | undefined;
  readonly set: (change: Partial<DraftLine>, by?: string) => void;
}): ReactNode {
  const { line, place, fault, set } = props;
  const announce = useAnnounce();
  const at = positionOf(line);

  function put([lon, lat]: Position, by?: string): void {
    set({ lon: lon.toFixed(DECIMALS), lat: lat.toFixed(DECIMALS) }, by);
  }

  return (
    <div className="stack">
      <SectionMap
        label={t`Map of your section, north up. Tap where the flock was, or give bearing and distance below.`}
        place={place}
        mark={at}
        onTap={(position) => {
          put(position);
          const where = positionWords(position, place);
          announce(t`Position put in. ${where}`);
        }}
      />
      <p className="row">
        <span>{positionWords(at, place)}</span>
        {at === null ? null : (
          <button type="button" className="button" onClick={() => set({ lon: '', lat: '' })}>
            <Trans>No position</Trans>
          </button>
        )}
      </p>
      {place.vantage === null ? null : (
        <FromVantage vantage={place.vantage} put={(position) => put(position, 'from-vantage')} />
      )}
      <div className="two-fields">
        <TextField
          label={t`Latitude`}
          hint={t`degrees, north is positive: 44.21370`}
          autoComplete="off"
          value={line.lat}
          fault={fault('lat')}
          onChange={(lat) => set({ lat }, 'lat')}
        />
        <TextField
          label={t`Longitude`}
          hint={t`degrees, west is negative: -79.45210`}
          autoComplete="off"
          value={line.lon}
          fault={fault('lon')}
          onChange={(lon) => set({ lon }, 'lon')}
        />
      </div>
      <FromPhone set={set} />
    </div>
  );
}

function positionOf({ lon, lat }: DraftLine): Position | null {
  if (lon.trim() === '' || lat.trim() === '') return null;
  const [east, north] = [Number(lon), Number(lat)];
  return Math.abs(east) <= 180 && Math.abs(north) <= 90 ? [east, north] : null;
}

/** `1,240 m to the NW (312°) of Old pier.`, so that a slip of the finger shows. */
function positionWords(at: Position | null, place: Place): string {
  if (at === null) return t`No position yet: tap the map.`;
  const from = fromNamedThing(at, place);
  return from === null ? t`Position put in.` : `${from}.`;
}

/** A bearing by compass and a distance by eye or rangefinder, from where the observer stands. */
function FromVantage(props: {
  readonly vantage: NonNullable<Place['vantage']>;
  readonly put: (position: Position) => void;
}): ReactNode {
  const { vantage, put } = props;
  const { name } = vantage;
  const [bearing, setBearing] = useState('');
  const [distance, setDistance] = useState('');
  const towards = degreesOf(bearing);
  const metres = metresOf(distance);
  const farthest = birds(FARTHEST_SEEN);

  function place(nextBearing: string, nextDistance: string): void {
    setBearing(nextBearing);
    setDistance(nextDistance);
    const [degrees, far] = [degreesOf(nextBearing), metresOf(nextDistance)];
    if (degrees !== null && far !== null) put(geodesicFrom(vantage.position, degrees, far));
  }

  return (
    <div className="two-fields">
      <NumberField
        label={t`Bearing from ${name}`}
        hint={t`degrees from true north; a magnetic compass needs its declination`}
        value={bearing}
        fault={
          bearing.trim() !== '' && towards === null
            ? t`Give degrees from north, 0 to 360.`
            : undefined
        }
        onChange={(text) => place(text, distance)}
      />
      <NumberField
        label={t`Distance in metres`}
        hint={t`by eye, or from a rangefinder`}
        value={distance}
        fault={
          distance.trim() !== '' && metres === null
            ? t`Give metres, over 0 and up to ${farthest}.`
            : undefined
        }
        onChange={(text) => place(bearing, text)}
      />
    </div>
  );
}

function degreesOf(text: string): number | null {
  const degrees = Number(text.replace(',', '.'));
  return text.trim() !== '' && degrees >= 0 && degrees <= 360 ? degrees : null;
}

function metresOf(text: string): number | null {
  const metres = Number(text.replace(',', '.'));
  return text.trim() !== '' && metres > 0 && metres <= FARTHEST_SEEN ? metres : null;
}

/** The phone's own position, for a start. */
function FromPhone(props: {
  readonly set: (change: Partial<DraftLine>, by?: string) => void;
}): ReactNode {
  const { set } = props;
  const [told, setTold] = useState<string | null>(null);
  const announce = useAnnounce();
  // The phone may take a while: its answer goes into the line as it is by then, if it is still open.
  const setLatest = useRef<typeof set | null>(null);
  useEffect(() => {
    setLatest.current = set;
    return () => {
      setLatest.current = null;
    };
  }, [set]);

  function tell(words: string): void {
    setTold(words);
    announce(words);
  }

  function takeFromPhone(): void {
    if (!('geolocation' in navigator)) {
      tell(t`This phone gives no position. Type it instead, or leave it empty.`);
      return;
    }
    setTold(t`Asking the phone …`);
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        if (setLatest.current === null) return;
        setLatest.current({
          lon: coords.longitude.toFixed(DECIMALS),
          lat: coords.latitude.toFixed(DECIMALS),
        });
        const metres = Math.max(Math.round(coords.accuracy), 1);
        tell(
          t`Put in, good to about ${metres} m. It is where you stand: change it if the flock was farther off.`,
        );
      },
      ({ code, PERMISSION_DENIED }) => {
        if (setLatest.current === null) return;
        tell(
          code === PERMISSION_DENIED
            ? t`The phone may not tell its position. Allow it in the browser’s settings, type the position, or leave it empty.`
            : t`The phone found no position here. Try again under open sky, type it, or leave it empty.`,
        );
      },
      { enableHighAccuracy: true, timeout: 20_000, maximumAge: 10_000 },
    );
  }

  return (
    <div className="stack-tight">
      <div>
        <button type="button" className="button" onClick={takeFromPhone}>
          <Trans>Use my phone’s position</Trans>
        </button>
      </div>
      {told === null ? null : <p className="hint">{told}</p>}
    </div>
  );
}

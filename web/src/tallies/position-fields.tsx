import { useEffect, useRef, useState, type ReactNode } from 'react';
import { useAnnounce } from '../ui/announcer.js';
import { TextField } from '../ui/text-field.js';
import type { DraftLine } from './draft.js';

/** About a metre; a phone knows no better. */
const DECIMALS = 5;

/** Where the flock was, in degrees; the phone's own position can be put in as a start. */
export function PositionFields(props: {
  readonly line: DraftLine;
  readonly fault: (field: string) => string | undefined;
  readonly set: (change: Partial<DraftLine>) => void;
}): ReactNode {
  const { line, fault, set } = props;
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
      tell('This phone gives no position. Type it instead, or leave it empty.');
      return;
    }
    setTold('Asking the phone …');
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        if (setLatest.current === null) return;
        setLatest.current({
          lon: coords.longitude.toFixed(DECIMALS),
          lat: coords.latitude.toFixed(DECIMALS),
        });
        tell(
          `Put in, good to about ${Math.max(Math.round(coords.accuracy), 1)} m. It is where you stand: change it if the flock was farther off.`,
        );
      },
      ({ code, PERMISSION_DENIED }) => {
        if (setLatest.current === null) return;
        tell(
          code === PERMISSION_DENIED
            ? 'The phone may not tell its position. Allow it in the browser’s settings, type the position, or leave it empty.'
            : 'The phone found no position here. Try again under open sky, type it, or leave it empty.',
        );
      },
      { enableHighAccuracy: true, timeout: 20_000, maximumAge: 10_000 },
    );
  }

  return (
    <div className="stack-tight">
      <div className="two-fields">
        <TextField
          label="Latitude"
          hint="degrees, north is positive: 44.21370"
          autoComplete="off"
          value={line.lat}
          fault={fault('lat')}
          onChange={(lat) => set({ lat })}
        />
        <TextField
          label="Longitude"
          hint="degrees, west is negative: -79.45210"
          autoComplete="off"
          value={line.lon}
          fault={fault('lon')}
          onChange={(lon) => set({ lon })}
        />
      </div>
      <div>
        <button type="button" className="button" onClick={takeFromPhone}>
          Use my phone’s position
        </button>
      </div>
      {told === null ? null : <p className="hint">{told}</p>}
    </div>
  );
}

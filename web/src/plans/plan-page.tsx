import { t } from '@lingui/core/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { useLocation } from 'wouter';
import { v7 } from 'uuid';
import type { Role } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { Cautions } from '../tallies/cautions.js';
import { instantNear } from '../tallies/local-time.js';
import { ActForm } from '../ui/act-form.js';
import { Field } from '../ui/field.js';
import { TextField } from '../ui/text-field.js';
import { Page } from '../ui/page.js';
import { pathOf } from '../ui/path.js';
import { PlanCount } from './documents.js';
import { PlannedPeople, type PlannedPerson } from './planned-people.js';

/** Plans a count from scratch: what, where, when and who. */
export function PlanPage(): ReactNode {
  const [name, setName] = useState('');
  const [waterbody, setWaterbody] = useState('');
  const [date, setDate] = useState('');
  const [timeZone, setTimeZone] = useState(() => Intl.DateTimeFormat().resolvedOptions().timeZone);
  const [start, setStart] = useState('');
  const [end, setEnd] = useState('');
  const [places, setPlaces] = useState<{ readonly name: string; readonly text: string } | null>(
    null,
  );
  const [people, setPeople] = useState<readonly PlannedPerson[]>([
    { key: v7(), name: '', roles: ['OBSERVER'] },
  ]);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, plan] = useMutation(PlanCount);
  const [, navigate] = useLocation();

  async function submit(): Promise<void> {
    setTrouble(null);
    const answer = await plan({
      input: {
        id: v7(),
        name,
        waterbody,
        date,
        timeZone,
        windows: [
          { id: 'w1', start: onDay(start, date, timeZone), end: onDay(end, date, timeZone) },
        ],
        places: places?.text ?? '',
        people: people
          .filter((person) => person.name.trim() !== '')
          .map((person) => ({
            id: person.key,
            name: person.name.trim(),
            roles: [...person.roles] as Role[],
          })),
      },
    });
    if (answer.error) setTrouble(readTrouble(answer.error));
    else if (answer.data) navigate(pathOf('counts', answer.data.planCount.id, 'coverage'));
  }

  return (
    <Page
      title={t`Plan a count`}
      width="reading"
      intro={t`One waterbody, one day, one window. Assignments come next.`}
    >
      <ActForm trouble={trouble} act={submit}>
        <TextField label={t`Name of the count`} required value={name} onChange={setName} />
        <TextField label={t`Waterbody`} required value={waterbody} onChange={setWaterbody} />
        <div className="two-fields">
          <TextField label={t`Date`} type="date" required value={date} onChange={setDate} />
          <TextField
            label={t`Window begins`}
            type="time"
            required
            value={start}
            onChange={setStart}
          />
          <TextField label={t`Window ends`} type="time" required value={end} onChange={setEnd} />
        </div>
        <TextField
          label={t`Time zone`}
          required
          hint={t`an IANA name, such as America/Toronto`}
          value={timeZone}
          onChange={setTimeZone}
        />
        <Field
          label={t`Places`}
          hint={t`A GeoJSON file with the sections, vantage points and what is seen from them`}
        >
          {(ties) => (
            <input
              {...ties}
              type="file"
              required
              accept=".geojson,.json"
              onChange={(event) => {
                const file = event.target.files?.[0];
                if (file === undefined) setPlaces(null);
                else void file.text().then((text) => setPlaces({ name: file.name, text }));
              }}
            />
          )}
        </Field>
        <PlannedPeople people={people} onChange={setPeople} />
        <Cautions open />
        <div>
          <button type="submit" className="button" data-kind="main" disabled={fetching}>
            {fetching ? t`Planning …` : t`Plan this count`}
          </button>
        </div>
      </ActForm>
    </Page>
  );
}

/** A clock time on the count's day; an end before the start is left for the server to name. */
function onDay(clockTime: string, date: string, timeZone: string): string {
  const noon = `${date}T12:00:00Z`;
  try {
    return instantNear(clockTime, { start: noon, end: noon }, timeZone) ?? clockTime;
  } catch {
    // An unknown time zone: the server says so, with the nearest known one.
    return `${date}T${clockTime}:00Z`;
  }
}

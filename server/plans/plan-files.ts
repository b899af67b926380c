import type * as Api from '../api/generated/schema.js';
import { Refusal } from '../core/refusal.js';
import type { FolderFile } from '../exchange/folder-files.js';
import { say } from '../core/model/saying.js';

/**
 * A plan in the form of a count folder, so that it is checked by the same rules and told of with the
 * same sentences as one that is imported.
 *
 * @throws Refusal BAD_INPUT if the protocol is not JSON
 */
export function planFiles(input: Api.PlanCountInput): readonly FolderFile[] {
  const { id, name, waterbody, date, timeZone, windows, people, places, protocol } = input;
  const count = {
    id,
    name,
    waterbody,
    date,
    timeZone,
    windows: windows.map(({ slackMinutes, ...window }) => ({
      ...window,
      ...(typeof slackMinutes === 'number' && { slackMinutes }),
    })),
    people: people.map(({ roles, ...person }) => ({
      ...person,
      roles: roles.map((role) => role.toLowerCase()),
    })),
    ...(typeof protocol === 'string' && { protocol: protocolValue(protocol) }),
  };
  return [
    { name: 'count.json', content: JSON.stringify(count) },
    { name: 'places.geojson', content: places },
  ];
}

function protocolValue(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw Refusal.badInput([
      {
        code: 'not-json',
        file: 'protocol',
        row: null,
        column: null,
        value: text.slice(0, 80),
        problem: say('the protocol is not JSON'),
        expected: say('a JSON object with protocol settings, or nothing'),
        nearest: null,
      },
    ]);
  }
}

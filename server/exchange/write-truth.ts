import type { SimulationOptions } from '../core/simulate/options.js';
import type { Truth } from '../core/score/truth.js';
import { writeCsv } from './write-csv.js';
import type { TextFile } from './write-folder.js';

/**
 * What a simulated count folder has beside the count: `truth.json`, with the options that it was
 * made by, and the true links as `links.csv`.
 */
export function writeTruth(truth: Truth, options: SimulationOptions): readonly TextFile[] {
  const { total, sections, flyingThrough, toBeSeen, found, planted, links, flocks } = truth;
  const blocks = [
    field('simulation', JSON.stringify(options)),
    field('total', JSON.stringify(total)),
    ...Object.entries({ sections, flyingThrough, toBeSeen, found }).flatMap(([key, places]) =>
      places === null ? [] : [field(key, byLine(places))],
    ),
    ...(planted === null ? [] : [field('planted', listed(planted))]),
    field('links', listed(links)),
    ...(flocks === null ? [] : [field('flocks', listed(flocks))]),
  ];
  return [
    { name: 'truth.json', text: `{\n${blocks.join(',\n')}\n}\n` },
    {
      name: 'links.csv',
      text: writeCsv(
        ['line_a', 'line_b', 'same'],
        links.map(({ lines }) => [...lines, 'yes']),
      ),
    },
  ];
}

function field(key: string, json: string): string {
  return `  ${JSON.stringify(key)}: ${json}`;
}

/** One entry a line: short to read, and a changed entry is a changed line. */
function byLine(places: Readonly<Record<string, unknown>>): string {
  const lines = Object.entries(places).map(
    ([place, value]) => `    ${JSON.stringify(place)}: ${JSON.stringify(value)}`,
  );
  return lines.length === 0 ? '{}' : `{\n${lines.join(',\n')}\n  }`;
}

function listed(entries: readonly object[]): string {
  const lines = entries.map((entry) => `    ${JSON.stringify(entry)}`);
  return lines.length === 0 ? '[]' : `[\n${lines.join(',\n')}\n  ]`;
}

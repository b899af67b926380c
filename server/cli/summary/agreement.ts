import type { Words } from './words.js';
import type { AgreementMeasures, Statistic } from '../../core/model/agreement.js';
import type { Result } from '../../core/model/result.js';
import { table, wrap } from './layout.js';

const MEASURES = [
  ['percentAgreement', 'birds agreed'],
  ['brayCurtisSimilarity', 'Bray–Curtis'],
  ['concordance', "Lin's conc."],
  ['kappa', 'kappa'],
] as const satisfies readonly (readonly [keyof AgreementMeasures, string])[];

/** Agreement overall and per pair of observers; "too few" where a number would say nothing. */
export function agreementLines(result: Result<string>, words: Words): readonly string[] {
  const row = (name: string, measures: AgreementMeasures): readonly string[] => [
    name,
    ...MEASURES.map(([measure]) => statistic(measures[measure])),
  ];
  const columns = [
    { title: '', align: 'left', most: 26 } as const,
    ...MEASURES.map(([, title]) => ({ title, align: 'right' }) as const),
  ];
  const pairs = result.agreement.byPair.map((pair) =>
    row(`${words.person(pair.a)} and ${words.person(pair.b)}`, pair),
  );
  return [
    ...table(columns, [row('All pairs', result.agreement.overall), ...pairs]),
    ...wrap(
      'Value (95 % interval). "Too few" where fewer units were compared than the protocol asks.',
    ),
  ];
}

/** ".63 (.47–.88)". */
export function statistic({ value, low, high }: Statistic): string {
  if (value === null) return 'too few';
  const interval = low === null || high === null ? '' : ` (${short(low)}–${short(high)})`;
  return `${short(value)}${interval}`;
}

/** 0.87 → ".87", 1 → "1.00". */
function short(value: number): string {
  return value.toFixed(2).replace(/^(-?)0\./u, '$1.');
}

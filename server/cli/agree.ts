import { styleText } from 'node:util';
import { ENGLISH } from '../core/model/saying.js';
import { wordedResult } from '../core/model/worded-result.js';
import { reconcile } from '../core/reconcile.js';
import { agreementCsv } from '../exchange/agreement-csv.js';
import { loadFolder } from './check.js';
import { EXIT, type ExitCode, type Streams } from './exit-codes.js';
import { agreeText } from './summary/agree-text.js';

export const AGREE_FORMATS = ['text', 'json', 'csv'] as const;

export interface AgreeOptions {
  readonly format: (typeof AGREE_FORMATS)[number];
}

/**
 * `countersign agree FOLDER`: how well the observers of a count agree, before any ruling, observers'
 * ratios and consistency included. Whoever has the folder has all tallies anyway.
 */
export async function agree(
  folder: string,
  { format }: AgreeOptions,
  streams: Streams,
): Promise<ExitCode> {
  const loaded = await loadFolder(folder, streams);
  if (!loaded.ok) return loaded.code;
  const { snapshot, protocol } = loaded.count;
  const result = wordedResult(reconcile(snapshot, [], protocol), ENGLISH);
  const heading = (text: string): string => (streams.terminal ? styleText('bold', text) : text);
  switch (format) {
    case 'json':
      streams.out(`${JSON.stringify(result.agreement)}\n`);
      break;
    case 'csv':
      streams.out(agreementCsv(result));
      break;
    case 'text':
      streams.out(agreeText(result, snapshot, { heading }));
      break;
  }
  return EXIT.clean;
}

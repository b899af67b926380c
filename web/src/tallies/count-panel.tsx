import { msg, plural, t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import { Field } from '../ui/field.js';
import { useKeptChoice } from '../ui/kept.js';
import { countedBirds } from '../ui/counted.js';
import { birds } from '../ui/words.js';
import { BlockKeys, DigitKeys, TapKeys } from './count-keys.js';
import { wholeNumber, type DraftLine } from './draft.js';
import { Choice } from './choice.js';

const ways = [
  { value: 'taps', label: msg`Taps` },
  { value: 'blocks', label: msg`Blocks` },
  { value: 'keys', label: msg`Keypad` },
] as const;
type Way = (typeof ways)[number]['value'];

/** Birds in a block to begin with; the observer sets their own. */
const FIRST_BLOCK = '10';

/**
 * The number of a line under the thumb, while the eye stays at the telescope: taps of 1, 5, 10 and
 * 100 up or down, whole blocks, or digits. Counting in blocks is a method of its own, so choosing it
 * says how the line was counted too. The field takes a keyboard as well.
 */
export function CountPanel(props: {
  readonly line: DraftLine;
  readonly fault: string | undefined;
  readonly blockFault: string | undefined;
  readonly set: (change: Partial<DraftLine>, by?: string) => void;
}): ReactNode {
  const { line, set } = props;
  const [kept, keep] = useKeptChoice('countersign.count-way', ['taps', 'keys'], 'taps');
  const way: Way = line.method === 'block' ? 'blocks' : kept;
  const number = wholeNumber(line.number);

  function choose(next: Way): void {
    if (next === 'blocks') {
      set({ method: 'block', block: line.block === '' ? FIRST_BLOCK : line.block });
      return;
    }
    keep(next);
    if (line.method === 'block') set({ method: 'one-by-one' });
  }

  return (
    <div className="count-panel stack-tight">
      <div className="count-shown">
        <Field label={t`Birds`} fault={props.fault}>
          {(ties) => (
            <input
              {...ties}
              type="text"
              inputMode="numeric"
              autoComplete="off"
              className="number number-shown"
              value={line.number}
              onChange={(event) => set({ number: event.target.value }, 'number')}
            />
          )}
        </Field>
        <Choice legend={t`Count by`} isShort value={way} options={ways} onChange={choose} />
      </div>
      {way === 'taps' ? (
        <TapKeys number={number} onNumber={(next) => set({ number: next })} />
      ) : null}
      {way === 'blocks' ? (
        <BlockKeys line={line} number={number} fault={props.blockFault} set={set} />
      ) : null}
      {way === 'keys' ? (
        <DigitKeys value={line.number} onChange={(next) => set({ number: next })} />
      ) : null}
      <p className="hint count-words">{wordsOf(line, number)}</p>
    </div>
  );
}

/** What the number says: `350 birds: 7 blocks of 50.` */
function wordsOf(line: DraftLine, number: number | null): string {
  if (number === null)
    return t`Saw none of it? Tap −1 or type 0: a stated zero counts as an answer.`;
  if (number === 0) return t`A stated zero: you looked for it and saw none.`;
  const block = line.method === 'block' ? wholeNumber(line.block) : null;
  if (block === null || block === 0) return `${countedBirds(number)}.`;
  const blocks = Math.floor(number / block);
  const rest = number - blocks * block;
  const all = countedBirds(number);
  const size = birds(block);
  const left = birds(rest);
  return rest === 0
    ? t`${all}: ${plural(blocks, { one: '# block', other: '# blocks' })} of ${size}.`
    : t`${all}: ${plural(blocks, { one: '# block', other: '# blocks' })} of ${size} and ${left} more.`;
}

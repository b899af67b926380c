import { t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import { wholeNumber, type DraftLine } from './draft.js';
import { NumberField } from './number-field.js';

const steps = [1, 5, 10, 100] as const;
const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;
const blockSizes = ['10', '20', '50', '100'] as const;
const MOST_DIGITS = 6;

/** The number with so many birds more or fewer, never under 0. */
export function stepped(number: number | null, step: number): string {
  return String(Math.max(0, (number ?? 0) + step));
}

/** Up and down by 1, 5, 10 and 100. */
export function TapKeys(props: {
  readonly number: number | null;
  readonly onNumber: (number: string) => void;
}): ReactNode {
  const { number, onNumber } = props;
  return (
    <div className="count-keys">
      {steps.map((step) => (
        <button
          key={step}
          type="button"
          className="button count-take"
          aria-label={t`Take ${step} away`}
          onClick={() => onNumber(stepped(number, -step))}
        >
          −{step}
        </button>
      ))}
      {steps.map((step) => (
        <button
          key={step}
          type="button"
          className="button count-add"
          aria-label={t`Add ${step}`}
          onClick={() => onNumber(stepped(number, step))}
        >
          +{step}
        </button>
      ))}
    </div>
  );
}

/** Whole blocks of a size that is set first, and single birds for what is left over. */
export function BlockKeys(props: {
  readonly line: DraftLine;
  readonly number: number | null;
  readonly fault: string | undefined;
  readonly set: (change: Partial<DraftLine>, by?: string) => void;
}): ReactNode {
  const { line, number, set } = props;
  const block = wholeNumber(line.block) ?? 0;
  const step = (birds: number): void => set({ number: stepped(number, birds) });
  return (
    <>
      <div className="block-sizes">
        <NumberField
          label={t`Birds in one block`}
          value={line.block}
          fault={props.fault}
          onChange={(size) => set({ block: size }, 'block')}
        />
        <div className="count-keys" role="group" aria-label={t`Usual blocks`}>
          {blockSizes.map((size) => (
            <button
              key={size}
              type="button"
              className="button"
              aria-pressed={line.block === size}
              onClick={() => set({ block: size })}
            >
              {size}
            </button>
          ))}
        </div>
      </div>
      <div className="count-keys">
        <button
          type="button"
          className="button"
          aria-label={t`Take 1 away`}
          onClick={() => step(-1)}
        >
          −1
        </button>
        <button type="button" className="button" aria-label={t`Add 1`} onClick={() => step(1)}>
          +1
        </button>
        <button
          type="button"
          className="button count-take"
          aria-label={block === 0 ? t`Take a block away` : t`Take a block of ${block} away`}
          disabled={block === 0}
          onClick={() => step(-block)}
        >
          {block === 0 ? t`− block` : `−${block}`}
        </button>
        <button
          type="button"
          className="button count-add"
          aria-label={block === 0 ? t`Add a block` : t`Add a block of ${block}`}
          disabled={block === 0}
          onClick={() => step(block)}
        >
          {block === 0 ? t`+ block` : `+${block}`}
        </button>
      </div>
    </>
  );
}

/** Digits that gloves can hit. */
export function DigitKeys(props: {
  readonly value: string;
  readonly onChange: (value: string) => void;
}): ReactNode {
  const { value, onChange } = props;
  const put = (digit: string): void =>
    onChange((value === '0' ? '' : value.slice(0, MOST_DIGITS - 1)) + digit);
  return (
    <div className="digit-keys" role="group" aria-label={t`Digits`}>
      {digits.map((digit) => (
        <button key={digit} type="button" className="button" onClick={() => put(digit)}>
          {digit}
        </button>
      ))}
      <button
        type="button"
        className="button"
        aria-label={t`Empty the number`}
        onClick={() => onChange('')}
      >
        C
      </button>
      <button type="button" className="button" onClick={() => put('0')}>
        0
      </button>
      <button
        type="button"
        className="button"
        aria-label={t`Delete the last digit`}
        onClick={() => onChange(value.slice(0, -1))}
      >
        ⌫
      </button>
    </div>
  );
}

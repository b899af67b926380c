import { t } from '@lingui/core/macro';
import { useEffect, useReducer, type ComponentType, type ReactNode } from 'react';
import { useOnline } from './online.js';

const loads: (() => Promise<void>)[] = [];

/**
 * A part of a page that is loaded after the page: when it is first drawn, or by `loadAllLater`. Once it
 * is there, it is drawn at once like any other. Where there is no connection to load it by, the rest of
 * the page goes on without it.
 */
export function later<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): (props: Props) => ReactNode {
  let part: ComponentType<Props> | null = null;
  const loadOnce = async (): Promise<void> => {
    part ??= await load();
  };
  loads.push(loadOnce);
  return function Later(props: Props): ReactNode {
    const [, drawAgain] = useReducer((draws: number) => draws + 1, 0);
    const online = useOnline();
    useEffect(() => {
      // Tried again with each change of the connection.
      if (part === null) loadOnce().then(drawAgain, () => undefined);
    }, [online]);
    const Part = part;
    return Part === null ? (
      <p className="hint">{t`This part is not on the phone yet.`}</p>
    ) : (
      <Part {...props} />
    );
  };
}

/** Loads every such part, so that none is waited for. What cannot be loaded is tried when it is drawn. */
export async function loadAllLater(): Promise<void> {
  await Promise.allSettled(loads.map((load) => load()));
}

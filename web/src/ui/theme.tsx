import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useEffect, type ReactNode } from 'react';
import { useKeptChoice } from './kept.js';

const THEMES = ['light', 'sunlight', 'night'] as const;

const names: Readonly<Record<(typeof THEMES)[number], MessageDescriptor>> = {
  light: msg`Paper`,
  sunlight: msg`Sunlight`,
  night: msg`Night`,
};

/** Paper for the desk, sunlight for glare, night for eyes that must see the dark again. */
export function ThemeChoice(): ReactNode {
  const [theme, setTheme] = useKeptChoice('countersign.theme', THEMES, 'light');
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  return (
    <label className="theme-choice">
      <span className="for-readers">
        <Trans>Colours of the page</Trans>
      </span>
      <select
        value={theme}
        onChange={(event) => {
          const chosen = THEMES.find((one) => one === event.target.value);
          if (chosen !== undefined) setTheme(chosen);
        }}
      >
        {THEMES.map((one) => (
          <option key={one} value={one}>
            {i18n._(names[one])}
          </option>
        ))}
      </select>
    </label>
  );
}

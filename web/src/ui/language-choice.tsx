import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { chooseLanguage, LANGUAGES, useLanguage, type Language } from './language.js';

const languages = Object.keys(LANGUAGES) as readonly Language[];

/** The language of the pages. Out of range a language that was never opened may not be there. */
export function LanguageChoice(): ReactNode {
  const language = useLanguage();
  const [missing, setMissing] = useState<Language | null>(null);

  async function choose(next: Language): Promise<void> {
    try {
      await chooseLanguage(next);
      setMissing(null);
    } catch {
      setMissing(next);
    }
  }

  return (
    <label className="theme-choice">
      <span className="for-readers">
        <Trans>Language</Trans>
      </span>
      <select
        value={language}
        onChange={(event) => {
          const next = languages.find((one) => one === event.target.value);
          if (next !== undefined) void choose(next);
        }}
      >
        {languages.map((one) => (
          <option key={one} value={one} lang={one}>
            {LANGUAGES[one]}
          </option>
        ))}
      </select>
      {missing === null ? null : (
        <span role="status">
          <Trans>{LANGUAGES[missing]} could not be fetched. Try again with a connection.</Trans>
        </span>
      )}
    </label>
  );
}

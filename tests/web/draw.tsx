import { i18n } from '@lingui/core';
import { I18nProvider } from '@lingui/react';
import { render, type RenderResult } from '@testing-library/react';
import type { ReactNode } from 'react';

/** Draws a part of a page by itself, in the language in use. */
export function draw(part: ReactNode): RenderResult {
  return render(<I18nProvider i18n={i18n}>{part}</I18nProvider>);
}

// Pages are tested in English unless a test chooses another language. The texts of the source are
// the English ones, so that no catalogue has to be loaded.
import { i18n } from '@lingui/core';

i18n.loadAndActivate({ locale: 'en', locales: ['en-GB'], messages: {} });

/** A message catalogue, compiled by the build. */
declare module '*.po' {
  export const messages: import('@lingui/core').Messages;
}

/**
 * A value that is made when it is first asked for, and then kept: what an app does not need when it
 * opens costs nothing then.
 */
export function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null;
  return () => (made ??= { value: make() }).value;
}

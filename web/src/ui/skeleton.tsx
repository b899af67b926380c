import type { ReactNode } from 'react';

/** Grey lines in the place of the content to come; `rows` keeps about the room it will take. */
export function Skeleton(props: { readonly rows: number; readonly label: string }): ReactNode {
  return (
    <div className="stack" aria-busy="true">
      <p role="status" className="for-readers">
        {props.label}
      </p>
      {Array.from({ length: props.rows }, (_, row) => (
        <span
          key={row}
          className="skeleton"
          style={{ width: `${92 - ((row * 17) % 35)}%` }}
          aria-hidden="true"
        />
      ))}
    </div>
  );
}

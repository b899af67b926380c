import { useEffect, useRef, type ReactNode } from 'react';

/** Whether a page has been shown before: the first one leaves the focus where the browser put it. */
let aPageWasShown = false;

/**
 * One page: its title, a plain sentence on what it is for, and its content. Coming from another
 * page, the focus goes to the title, so that a screen reader starts there.
 */
export function Page(props: {
  readonly title: string;
  readonly intro?: ReactNode;
  readonly width?: 'entry' | 'reading' | 'desk';
  readonly children: ReactNode;
}): ReactNode {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${props.title} · Countersign`;
  }, [props.title]);
  useEffect(() => {
    if (aPageWasShown) heading.current?.focus({ preventScroll: true });
    aPageWasShown = true;
    window.scrollTo(0, 0);
  }, []);
  return (
    <main id="content" data-width={props.width ?? 'desk'}>
      <div className="page-head">
        <h1 ref={heading} tabIndex={-1}>
          {props.title}
        </h1>
        {props.intro === undefined ? null : <div className="soft">{props.intro}</div>}
      </div>
      {props.children}
    </main>
  );
}

import { createContext, useCallback, useContext, useState, type ReactNode } from 'react';

const AnnounceContext = createContext<(message: string) => void>(() => undefined);

/** Says status messages to screen readers without moving the focus (WCAG 4.1.3). */
export function Announcer(props: { readonly children: ReactNode }): ReactNode {
  const [message, setMessage] = useState({ text: '', turn: 0 });
  const announce = useCallback((text: string) => {
    setMessage((last) => ({ text, turn: last.turn + 1 }));
  }, []);
  return (
    <AnnounceContext value={announce}>
      {props.children}
      <div role="status" aria-live="polite" className="for-readers">
        {/* The key makes the same message count as new when it is said twice. */}
        <span key={message.turn}>{message.text}</span>
      </div>
    </AnnounceContext>
  );
}

export function useAnnounce(): (message: string) => void {
  return useContext(AnnounceContext);
}

import { useEffect, useState } from 'react';

/** The clock, looked at every few seconds and whenever the page is seen again. */
export function useNow(everyMs = 5000): number {
  const [nowMs, setNowMs] = useState(Date.now);
  useEffect(() => {
    const look = () => setNowMs(Date.now());
    const timer = setInterval(look, everyMs);
    document.addEventListener('visibilitychange', look);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, [everyMs]);
  return nowMs;
}

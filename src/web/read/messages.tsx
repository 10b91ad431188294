import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { Button } from 'react-aria-components';
import { useLocation } from 'wouter';

interface Message {
  id: number;
  text: string;
  passing: boolean;
  saidAtMs: number;
}
/** `passing`: of a press that can be seen anyway, an undo; the next takes its place, and it goes sooner. */
type Say = (text: string, passing?: 'passing') => void;

const SayContext = createContext<Say>(() => undefined);

/** Says something: shown at the edge of the screen, spoken by a screen reader; it leaves by itself, or with Escape. */
export function useSay(): Say {
  return useContext(SayContext);
}

/** Messages older than this many are dropped. */
const mostShown = 3;
const passingMs = 6000;
/** Said so shortly before the sheet was left, it is about the leaving. */
const ledMs = 1000;
/** Time enough to look up from the bench and read two lines. */
const stayingMs = 20_000;

export function MessageProvider({ children }: { children: ReactNode }) {
  const [messages, setMessages] = useState<readonly Message[]>([]);
  const lastId = useRef(0);
  const drop = useCallback((id: number) => setMessages((shown) => shown.filter((one) => one.id !== id)), []);
  const dropAll = useCallback(() => setMessages([]), []);
  const say = useCallback<Say>(
    (text, how) => {
      lastId.current += 1;
      const message = { id: lastId.current, text, passing: how === 'passing', saidAtMs: performance.now() };
      setMessages((shown) =>
        [...shown.filter((one) => !isReplaced(one, message)), message].slice(-mostShown),
      );
      setTimeout(() => drop(message.id), message.passing ? passingMs : stayingMs);
    },
    [drop],
  );
  useEscape(dropAll);
  useLeave(setMessages);
  const list = useMemo(
    () =>
      messages.map(({ id, text }) => (
        <div key={id} className="message">
          <p>{text}</p>
          <Button className="plain" onPress={() => drop(id)}>
            Close
          </Button>
        </div>
      )),
    [messages, drop],
  );
  return (
    <SayContext value={say}>
      {children}
      <div className="messages screen-only" role="status" aria-live="polite">
        {list}
      </div>
    </SayContext>
  );
}

/** On the next sheet what was said on this one only hides; what led there is still being read. */
function useLeave(change: (next: (shown: readonly Message[]) => readonly Message[]) => void): void {
  const [path] = useLocation();
  useEffect(() => {
    const since = performance.now() - ledMs;
    change((shown) => shown.filter(({ saidAtMs }) => saidAtMs > since));
  }, [path, change]);
}

function useEscape(press: () => void): void {
  useEffect(() => {
    const listen = (event: KeyboardEvent) => event.key === 'Escape' && press();
    addEventListener('keydown', listen);
    return () => removeEventListener('keydown', listen);
  }, [press]);
}

function isReplaced(old: Message, message: Message): boolean {
  return old.text === message.text || (old.passing && message.passing);
}

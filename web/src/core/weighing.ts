// Which questions of the page were answered from what was last weighed of an earlier show, and are
// being asked again.
import { useEffect, useState } from 'preact/hooks';

const askers = new Set<object>();
const heard = new Set<(weighing: boolean) => void>();

export function weighing(asker: object, on: boolean) {
  if (on !== askers.has(asker)) {
    on ? askers.add(asker) : askers.delete(asker);
    heard.forEach((each) => each(askers.size > 0));
  }
}

export function useWeighing(): boolean {
  const [on, set] = useState(askers.size > 0);
  useEffect(() => {
    heard.add(set);
    return () => void heard.delete(set);
  }, []);
  return on;
}

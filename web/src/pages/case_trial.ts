// A piece in the hand, and what its case would hold to where the hand has it.
import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../core/api';
import type { CareAnswer } from '../core/types';

export interface InHand {
  number: string;
  x: number;
  y: number;
}

// What the case must hold to with the piece where the hand has it. One question at a time, the
// latest place next; what comes after the hand let go is thrown away. The last answer stays until
// the case is answered for as it was put.
export function useTrial(key: string, settledAs: CareAnswer | null): [CareAnswer | null, (at: InHand | null) => void] {
  const [trial, set] = useState<CareAnswer | null>(null);
  const wish = useRef<InHand | null>(null);
  const busy = useRef(false);
  const ask = async () => {
    const at = wish.current;
    if (busy.current || !at) {
      return;
    }
    busy.current = true;
    try {
      const answer = await call('care', { case: key, moved: at.number, x: at.x, y: at.y });
      if (wish.current?.number === at.number) {
        set(answer);
      }
    } catch {
      set(null);
    }
    busy.current = false;
    if (wish.current !== at) {
      void ask();
    }
  };
  useEffect(() => set(null), [settledAs]);
  const move = (at: InHand | null) => {
    wish.current = at;
    void ask();
  };
  return [trial, move];
}

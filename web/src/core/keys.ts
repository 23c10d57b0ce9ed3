// Keys: bare letters work where no text is being typed; the page under the hand comes first.
import { useEffect, useRef } from 'preact/hooks';

export type Keys = Record<string, (event: KeyboardEvent) => void>;

export function nameOf(event: KeyboardEvent): string {
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const shifted = event.shiftKey && /^[a-z]$|^Arrow|^Enter$/.test(key);
  return (event.altKey ? 'alt+' : '') + (shifted ? 'shift+' : '') + key;
}

const typing = (target: EventTarget | null) =>
  target instanceof Element && !!target.closest('input:not([type=checkbox]):not([type=range]),textarea,select,[contenteditable]');

export function useKeys(keys: Keys) {
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.metaKey || event.ctrlKey) {
        return;
      }
      const name = nameOf(event);
      const act = latest.current[name];
      const onControl = event.target instanceof Element && !!event.target.closest('button,a[href],[role=option]');
      if (!act || (typing(event.target) && name !== 'Escape') || (onControl && (name === 'Enter' || name === ' '))) {
        return;
      }
      event.preventDefault();
      act(event);
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
}

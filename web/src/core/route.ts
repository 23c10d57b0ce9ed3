// Which page, and which piece on it: the address is the only memory of where one is.
import { useEffect, useState } from 'preact/hooks';

export interface Route {
  page: string;
  piece: string;
  query: URLSearchParams;
}

export function routeOf(path: string, query = ''): Route {
  const parts = path.split('/').filter(Boolean).map(decodeURIComponent);
  return { page: parts[0] ?? 'table', piece: parts[1] ?? '', query: new URLSearchParams(query) };
}

const routeNow = () => routeOf(location.pathname, location.search);
const heard = new Set<() => void>();
const tell = () => heard.forEach((each) => each());
addEventListener('popstate', tell);

export function go(path: string, instead = false) {
  if (path !== location.pathname + location.search) {
    history[instead ? 'replaceState' : 'pushState'](null, '', path);
  }
  tell();
}

// The address of a page; those of one piece keep the piece.
export const addressOf = (page: string, piece: string) => (piece && (page === 'sheet' || page === 'notes') ? `/${page}/` + encodeURIComponent(piece) : '/' + page);
export const sheetOf = (number: string) => '/sheet/' + encodeURIComponent(number);

export function useRoute(): Route {
  const [route, set] = useState(routeNow);
  useEffect(() => {
    const read = () => set(routeNow());
    heard.add(read);
    return () => void heard.delete(read);
  }, []);
  return route;
}

// Links within the workbench do not load the page again.
export function followLinks(event: MouseEvent) {
  const link = (event.target as Element).closest?.('a[href]') as HTMLAnchorElement | null;
  if (!link || event.metaKey || event.ctrlKey || event.shiftKey || link.target || link.download) {
    return;
  }
  const url = new URL(link.href);
  if (url.origin === location.origin && !/^\/(api|photo|prints\/|assets)/.test(url.pathname) && !url.hash) {
    event.preventDefault();
    go(url.pathname + url.search);
  }
}

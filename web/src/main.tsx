import { render } from 'preact';
import { App } from './app';
import { tableAhead } from './core/api';

// A picture says when it is there (style/parts.css).
document.addEventListener('load', ({ target }) => target instanceof HTMLImageElement && (target.dataset.there = ''), true);
tableAhead();
render(<App />, document.getElementById('app')!);
if ('serviceWorker' in navigator) {
  navigator.serviceWorker.register('/sw.js').catch(() => undefined);
}

import { render } from 'preact';
import { App } from './app';
import { tableAhead } from './core/api';

tableAhead();
render(<App />, document.getElementById('app')!);
if ('serviceWorker' in navigator) {
  navigator.serviceWorker.register('/sw.js').catch(() => undefined);
}

import { mount } from 'svelte';
import './app/tokens.css';
import './app/base.css';
import './app/print.css';
import App from './app/App.svelte';
import { followLinks } from './app/place.svelte';
import { keepPreferences } from './app/preferences.svelte';
import { openSession } from './app/session.svelte';
import { watchForUpdates } from './app/update.svelte';

const target = document.getElementById('app');
if (target) {
  keepPreferences();
  followLinks();
  void openSession();
  mount(App, { target });
  watchForUpdates();
}

// The page's entry: styles, the ledger's events, the shell.
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { listenToKeys } from './app/actions';
import { App } from './app/app';
import { listenToMain } from './app/native-menu';
import { connect } from './state/store';
import { letteringReady } from './theme/lettering';
import './theme/fonts.css';
import './theme/tokens.css';
import './theme/base.css';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no #root');
connect();
listenToMain();
listenToKeys();
await letteringReady();
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);

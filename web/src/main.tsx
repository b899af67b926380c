// First, since it fetches what is waited for below.
import { started } from './start.js';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.js';
import './ui/tokens.css';
import './ui/base.css';
import './ui/parts.css';
import './ui/frame.css';
import './tallies/tally.css';
import './tallies/counting.css';
import './plans/plan.css';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no element with the id "root".');
const page = createRoot(root);
// Not awaited here: what a build begins with is a plain script.
void started.then(() =>
  page.render(
    <StrictMode>
      <App />
    </StrictMode>,
  ),
);

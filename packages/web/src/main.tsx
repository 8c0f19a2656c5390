import { createRoot } from 'react-dom/client';
import { App } from './frame/app.tsx';
import './theme/tokens.css';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no #root');
createRoot(root).render(<App />);

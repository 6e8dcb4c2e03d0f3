import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Start } from './app/Start.tsx';
import { startTheme } from './look/theme.ts';
import './look/fonts.css';
import './look/tokens.css';
import './look/base.css';

startTheme();
createRoot(document.getElementById('page')!).render(<StrictMode><Start /></StrictMode>);

import './look/fonts.css';
import './look/tokens.css';
import './look/base.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { queryClient } from './api/query-client.ts';
import { router } from './router.tsx';
import { applyTheme } from './view/theme.ts';

applyTheme();

const page = document.getElementById('page');
if (page === null) throw new Error('index.html has no element "page"');
createRoot(page).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);

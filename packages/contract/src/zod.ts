import * as z from 'zod/mini';

// zod would otherwise try to compile its readers, which the page policy forbids and the browser's console reports.
z.config({ jitless: true });

export { z };

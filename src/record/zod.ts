import { z } from 'zod';

/** Without this zod tries `new Function`, which the page's content security policy rightly forbids. */
z.config({ jitless: true });

export { z };
